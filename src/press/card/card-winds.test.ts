import { toHtml } from 'hast-util-to-html';
import { expect, it } from 'vitest';
import { sampleAircraft, sampleRequest } from '../../../tests/press-sample.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import { metresPerSecondPerKnot } from '../../units/factors.ts';
import { aviation } from '../../words/figures/aviation.ts';
import { cardWinds } from './card-winds.ts';

const kt = metresPerSecondPerKnot;

it('a card never rounds a limit of the aircraft up, nor has a wind above it', () => {
  const limits = { wind: 18.9 * kt, crosswind: 9.6 * kt, tailwind: 5.7 * kt };
  const request = { ...sampleRequest, aircraft: { ...sampleAircraft, limits } };
  const html = toHtml(cardWinds(planApproach(request), request, aviation)).replaceAll('\u00a0', ' ');
  expect(html).toContain('<b>Not above 18 kt, 9 kt across, 5 kt behind.</b>');
  const winds = [...html.matchAll(/<th scope="col" class="number">(.*?)<\/th>/g)].map(([, text]) => text);
  expect(winds).toEqual(['0', '5', '10', '15']);
});
