import { VFile } from 'vfile';
import { expect, it } from 'vitest';
import { keptMessage, sayAgain } from './kept-messages.ts';

it('a warning that was kept as text is said again as it was, in its place', () => {
  const first = new VFile({ path: 'lessons/trial.md', value: 'One\ntwo\n' });
  const end = { line: 2, column: 4, offset: 7 };
  first.message('About a stretch', {
    place: { start: { line: 2, column: 1, offset: 4 }, end },
    ruleId: 'rule',
    source: 'chalkwing',
  });
  first.message('About a point', { place: { line: 1, column: 2 } });
  first.message('About the file');
  const kept = JSON.parse(JSON.stringify(first.messages.map(keptMessage)));
  const second = new VFile({ path: 'lessons/trial.md', value: 'One\ntwo\n' });
  for (const message of kept) sayAgain(message, second);
  const said = ({ messages }: VFile) =>
    messages.map(({ reason, line, column, place, ruleId, source, fatal, file }) => {
      return { reason, line, column, place, ruleId, source, fatal, file };
    });
  expect(said(second)).toEqual(said(first));
});
