import { expect, it } from 'vitest';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import { finalSightDrawing } from '../final-sight/final-sight.ts';
import { ink, size } from '../kit/ink.ts';
import { readSvg } from '../kit/svg-reading.ts';
import { patternDrawing } from '../pattern/pattern.ts';
import { profileDrawing } from '../profile/profile.ts';
import { roundOutDrawing } from '../round-out/round-out.ts';
import { drawnPattern } from '../shared/test-plans.ts';
import { turnsDrawing } from '../turns/turns.ts';

const plan = drawnPattern({ circuit: 'left', spacing: 400, pastAbeam: 220, radius: 90, height: 304.8 });
const options = {
  units: { height: 'ft', distance: 'm', speed: 'kt' },
  board: createNodeBoard(),
  id: 'n',
  maxWidth: 174,
  maxHeight: 120,
} as const;
const turn = { bank: 0.5, radius: 80, heightLost: { half: 40, whole: 80 } };
const note = 'In still air at the best-glide speed, the bank held all the way round.';

it.each([
  ['pattern', patternDrawing(plan, options), 'Heavy line'],
  ['profile', profileDrawing(plan, options), 'Height above'],
  ['round-out', roundOutDrawing(plan, options), 'Height of the wheels'],
  ['view on final', finalSightDrawing(plan, options), 'All three'],
  ['turns', turnsDrawing([turn], { ...options, aircraft: 'Osier 15', note }), 'In still air'],
])('%s: what says how to read it is as dark as its labels, and no smaller than 7.5 points', (...drawn) => {
  const [, { svg }, begins] = drawn;
  const texts = readSvg(svg).filter(({ name }) => name === 'text');
  const line = texts.find(({ text }) => text.startsWith(begins))!;
  expect(line.attributes.fill).toBe(ink);
  expect(line.attributes['font-size']).toBe(String(size.note));
});
