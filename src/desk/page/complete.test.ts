import { CompletionContext } from '@codemirror/autocomplete';
import { EditorState } from '@codemirror/state';
import { describe, expect, it } from 'vitest';
import type { FileKind, WordsAnswer } from '../api.ts';
import type { LiveSchool } from '../server/live-school.ts';
import { wordsFor } from '../server/words.ts';
import { completion } from './complete.ts';

const words: WordsAnswer = {
  ...wordsFor({ withSoundAircraft: undefined } as LiveSchool, ['first', 'second']),
  aircraft: [{ id: 'osier-15', name: 'Osier 15', class: 'weight-shift', powers: ['idle'] }],
  airfields: [{ id: 'fallow-reach', name: 'Fallow Reach', runways: ['24', '06'] }],
  faults: [{ id: 'final', name: 'Faults on final', rows: [{ id: 'slow', name: 'Slow on final' }] }],
};

/** What is offered where the `|` is. */
function offered(text: string, kind: FileKind = 'lesson', explicit = true): string[] {
  const at = text.indexOf('|');
  const state = EditorState.create({ doc: text.replace('|', '') });
  const found = completion(
    () => kind,
    () => words,
  )(new CompletionContext(state, at, explicit));
  const typed = text.slice(found?.from ?? at, at);
  return (found?.options ?? []).map(({ label }) => label).filter((label) => label.startsWith(typed));
}

const body = (line: string) => `---\ntitle: One\n---\n\nWords.\n\n${line}\n`;
const head = (lines: string) => `---\n${lines}\n---\n\nWords.\n`;

describe('in the words of a lesson', () => {
  it('offers directives after colons, each in its own form', () => {
    expect(offered(body(':::obj|'))).toEqual([':::objective']);
    expect(offered(body('::pat|'))).toEqual(['::pattern']);
    expect(offered(body('The speed is :air|'))).toEqual([':aircraft', ':air']);
    expect(offered(body('It begins ::pat|'))).toEqual([]);
  });

  it('offers nothing behind a plain colon', () => {
    expect(offered(body('The keys:|'), 'lesson', false)).toEqual([]);
    expect(offered(body('At 10:3|'), 'lesson', false)).toEqual([]);
  });

  it('offers what a directive takes in its brackets and in its braces', () => {
    expect(offered(body('A turn of :turn[ra|'))).toEqual(['radius']);
    expect(offered(body('A turn of :turn[radius]{|'))).toEqual(['bank', 'angle']);
    expect(offered(body('A turn of :turn[radius]{bank=30deg |'))).toEqual(['angle']);
    expect(offered(body('::reach{at=base-|'))).toEqual(['base-turn', 'base-key']);
    expect(offered(body('::reach{at="down|'))).toEqual(['downwind-key']);
  });

  it('offers the names that the school gave', () => {
    expect(offered(body('::faults{from=|'))).toEqual(['final']);
    expect(offered(body('::faults{from=final only="slow |'))).toEqual(['slow']);
    expect(offered(body('::pattern{faults=|'))).toEqual(['slow']);
  });
});

describe('in front matter', () => {
  it('offers the keys that it has not yet', () => {
    const keys = offered(head('title: One\nwind: calm\n|'));
    expect(keys).toContain('approach');
    expect(keys).not.toContain('title');
    expect(keys).not.toContain('wind');
  });

  it('offers the values of a key, and names of the school', () => {
    expect(offered(head('power: |'))).toEqual(['idle', 'stopped']);
    expect(offered(head('aircraft: os|'))).toEqual(['osier-15']);
    expect(offered(head('runway: |'))).toEqual(['"24"', '"06"']);
    expect(offered(head('needs: [first, s|'))).toEqual(['second']);
    expect(offered(head('needs:\n  - |'))).toEqual(['first', 'second']);
    expect(offered(head('class: [weight-shift, three|'))).toEqual(['three-axis']);
  });
});

describe('in a YAML file', () => {
  it('offers the keys of the section that the cursor is in', () => {
    expect(offered('name: One\nglide:\n  |', 'aircraft')).toEqual(['idle', 'stopped']);
    expect(offered('name: One\nglide:\n  idle:\n    |', 'aircraft')).toEqual(['speed', 'ratio', 'points']);
    expect(offered('name: One\nglide:\n  idle: {}\n|', 'aircraft')).not.toContain('glide');
    expect(offered('name: One\nglide:\n  idle: {}\n|', 'aircraft')).toContain('mass');
  });

  it('offers the keys of one item of a list', () => {
    const faults = 'name: One\nfaults:\n  - id: low\n    fault: Low\n  - id: high\n    |';
    expect(offered(faults, 'faults')).toContain('fault');
    expect(offered(faults, 'faults')).not.toContain('id');
    expect(offered('name: One\nfaults:\n  - |', 'faults')).toContain('id');
  });

  it('offers what a fault may fly', () => {
    expect(offered('faults:\n  - id: low\n    fly: |', 'faults')).toContain('"throttle: 5 s late"');
    expect(offered('faults:\n  - id: low\n    fly: "thr|"', 'faults')).toEqual(['throttle: 5 s late']);
  });
});
