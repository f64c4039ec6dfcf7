import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { sampleRequest } from '../../../tests/press-sample.ts';
import { aviation } from '../../words/figures/aviation.ts';
import { documentHtml } from '../formats/document-html.ts';
import { dataId } from './mark-live.ts';
import type { StudyData } from './study-data.ts';
import { withStudy } from './with-study.ts';

const page = { title: 'Power off', css: '', body: h('body', h('p', 'The lesson itself.')) };
const data = (name: string): StudyData => ({
  request: sampleRequest,
  school: {
    name,
    cautions: [],
    minimums: { finalTurn: 90, obstacleClearance: 15 },
    units: aviation,
    grading: ['not yet', 'alone'],
    fleet: [],
    airfields: [],
    faults: [],
  },
  rules: [],
  edition: 'student',
  drawingRoom: { width: 174, height: 200 },
  uses: [],
});

describe('the data of a study page', () => {
  it.each(['</script><script>alert(1)</script>', '<!-- <script>', 'a < b, \\u003c and “<”'])(
    'cannot end the element that it stands in: %s',
    (name) => {
      const html = documentHtml(withStudy(page, data(name), 'run()'));
      const [, before, json, after] = /^(.*)<script type="application\/json"[^>]*>(.*?)<\/script>(.*)$/s.exec(
        html,
      )!;
      expect(json).not.toContain('<');
      expect(JSON.parse(json!).school.name).toBe(name);
      expect(before).toContain('The lesson itself.');
      expect(after).toMatch(/^\s*<script>run\(\)<\/script>/);
      expect(html.match(/<script/g)).toHaveLength(2);
      expect(html).toContain(`id="${dataId}"`);
    },
  );
});

describe('the script of a study page', () => {
  it('that would end its own element is refused', () => {
    for (const script of ['"</script>"', '"<SCRIPT"', '"<!--"']) {
      expect(() => withStudy(page, data('T'), script)).toThrow('would end its own element');
    }
  });
});
