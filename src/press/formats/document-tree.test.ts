import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { makeTableRooms, setText, takeObjective } from './document-tree.ts';

const html = (content: ElementContent[]) => toHtml({ type: 'root', children: content });

describe('the objective', () => {
  it('is taken off the front, as the directive’s section', () => {
    const section = h('section', { class: 'part objective' }, [h('h2', 'Objective'), h('p', 'To land.')]);
    const { objective, rest } = takeObjective([{ type: 'text', value: '\n' }, section, h('p', 'Body')]);
    expect(html(objective)).toContain('To land.');
    expect(html(rest)).toBe('<p>Body</p>');
  });

  it('is taken off as a heading with what follows it, up to the next heading', () => {
    const { objective, rest } = takeObjective([
      h('h2', 'Objective'),
      h('p', 'To land.'),
      h('h2', 'Why'),
      h('p', 'Body'),
    ]);
    expect(html(objective)).toBe('<h2>Objective</h2><p>To land.</p>');
    expect(html(rest)).toBe('<h2>Why</h2><p>Body</p>');
  });

  it('stays where the lesson put it, where that is not the front', () => {
    const body = [h('p', 'First'), h('section', { class: 'objective' }, 'To land.')];
    expect(takeObjective(body)).toEqual({ objective: [], rest: body });
    expect(takeObjective([])).toEqual({ objective: [], rest: [] });
  });
});

describe('a table', () => {
  it('gets a room that scrolls on a narrow screen and bears its caption’s words', () => {
    const content: ElementContent[] = [
      h('section', [h('table', [h('caption', 'Keys'), h('tr', h('td', '1'))])]),
    ];
    makeTableRooms(content);
    expect(html(content)).toContain(
      '<div class="table-room" role="group" aria-label="Keys" tabindex="0"><table>',
    );
  });

  it('may be cut on paper only where it is long', () => {
    const rows = (count: number) => Array.from({ length: count }, () => h('tr', h('td', '1')));
    const content: ElementContent[] = [h('table', rows(40)), h('table', rows(4))];
    makeTableRooms(content);
    expect(html(content).match(/table-room long/g)).toHaveLength(1);
  });
});

describe('the text', () => {
  const set = (text: string) => {
    const content: ElementContent[] = [h('p', text)];
    setText(content);
    return (content[0] as { children: { value: string }[] }).children[0]?.value;
  };

  it('keeps a number and its unit on one line, and nothing else', () => {
    expect(set('within 50 m at 1,000 ft')).toBe('within 50\u00a0m at 1,000\u00a0ft');
    expect(set('24 minutes, 3 students, at 6:1')).toBe('24 minutes, 3 students, at 6:1');
  });

  it('has real quotation marks and apostrophes, and leaves feet and inches alone', () => {
    expect(set('Say "high" or "low, going down."')).toBe('Say “high” or “low, going down.”');
    expect(set('Call "150" yourself')).toBe('Call “150” yourself');
    expect(set("today's wind, the students' eyes")).toBe('today’s wind, the students’ eyes');
    expect(set('5\' 11" high and 6\' 2" wide')).toBe('5\' 11" high and 6\' 2" wide');
  });

  it('is left as typed in code', () => {
    const content: ElementContent[] = [h('p', h('code', 'today\'s "10 m"'))];
    setText(content);
    expect(html(content)).toContain('today\'s "10 m"');
  });
});
