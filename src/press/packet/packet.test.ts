import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { sampleRequest } from '../../../tests/press-sample.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import { documentHtml } from '../formats/document-html.ts';
import { papers } from '../paper/paper.ts';
import { type PacketInput, packetDocument } from './packet.ts';

const plan = planApproach(sampleRequest);
const body: ElementContent[] = [
  h('h1', 'Power off'),
  h('section', { class: 'objective' }, [h('h2', 'Objective'), h('p', 'To land at the spot.')]),
  h('p', 'The lesson itself.'),
];

function packet(changes: Partial<PacketInput> = {}): string {
  return documentHtml(
    packetDocument({
      title: 'Power off',
      body,
      edition: 'student',
      plan,
      request: sampleRequest,
      school: { name: 'A school', cautions: ['Only with an instructor.'] },
      rules: ['Keep the village clear.'],
      units: { height: 'ft', distance: 'm', speed: 'kt' },
      paper: papers.A4,
      date: new Date('2031-05-06T00:00:00Z'),
      fingerprint: 'abcd1234',
      ...changes,
    }),
  );
}

/** The text that a reader sees, without tags and style. */
function words(html: string): string {
  return html
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
}

describe('a packet', () => {
  it('is one document in English with a title, and asks for nothing outside itself', () => {
    const html = packet();
    expect(html).toMatch(/^<!doctype html>\s*<html lang="en">/);
    expect(html).toContain('<title>Power off — Osier 15');
    expect(html.match(/(?:src|href)="(?!#|data:)[^"]*"|url\((?!data:)|@import/g)).toBeNull();
    expect(html.match(/<h1/g)).toHaveLength(1);
  });

  it('says on its first page that nobody can take over in an aircraft of one seat, and of no other', () => {
    const one = { ...plan, aircraft: { ...plan.aircraft, seats: 1 } };
    expect(words(packet({ plan: one }))).toContain('Osier 15 has one seat: nobody can take over.');
    expect(words(packet({ plan: one }))).toContain('weight-shift, one seat');
    expect(words(packet())).not.toContain('one seat');
  });

  it('says for whom it is: aircraft, airfield, runway, wind, air, power setting, mass', () => {
    const text = words(packet());
    for (const said of [
      'Osier 15',
      'Fallow Reach',
      '24, left-hand',
      '238° true, 240° magnetic',
      'Engine idling',
      '365 kg',
    ]) {
      expect(text).toContain(said);
    }
    expect(text).toMatch(/Wind at 10 m 210° 12 kt/);
    expect(text).toMatch(/25 °C, QNH 1008 hPa/);
    expect(text).toMatch(/Density altitude 1,7\d0 ft/);
  });

  it('begins with title, for whom, objective, cautions, and then the lesson', () => {
    const text = words(packet());
    const order = [
      'Aircraft Osier 15',
      'To land at the spot.',
      'Cautions',
      'The lesson itself.',
      'What went in',
    ];
    const places = order.map((part) => text.indexOf(part));
    expect(places).not.toContain(-1);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it('can not do without its cautions', () => {
    const text = words(packet({ body: [], rules: [], school: { name: 'A school', cautions: [] } }));
    expect(text).toContain('This is training material.');
    expect(text).toContain('own handbook, local rules and the instructor’s judgement prevail');
    expect(text).toContain('computed from the profile of Osier 15');
  });

  it('prints the school’s, the airfield’s and the flight’s own cautions, those with the source of their limit', () => {
    const html = packet({
      plan: {
        ...plan,
        cautions: [
          {
            code: 'final-turn-low',
            grade: 'beyond-good-practice',
            value: 250 * 0.3048,
            limit: 300 * 0.3048,
            source: 'school-minimum',
          },
        ],
      },
    });
    const text = words(html);
    expect(text).toContain('Only with an instructor.');
    expect(text).toContain('Keep the village clear.');
    expect(text).toContain(
      'The turn to final is complete at 250 ft; it should be complete at 300 ft or higher. Limit: the school’s own minimum',
    );
  });

  it('says among the cautions which day the lesson asks for, and what its wind breaks, where it asks', () => {
    expect(words(packet())).not.toContain('The day this lesson asks for');
    const asked = (mostWind: number) =>
      /<section class="caution packet-cautions".*?<\/section>/s.exec(packet({ day: { mostWind } }))![0];
    // The sample's wind is 12 kt.
    expect(words(asked(7))).toMatch(/The day this lesson asks for A wind of no more than 13 kt/);
    expect(asked(7)).not.toMatch(/<strong>The wind/);
    expect(asked(5.2)).toMatch(
      /<p><strong>The wind is 12.kt, and the lesson asks for no more than 10.kt: choose another wind/,
    );
  });

  it('says so, in the first place, where the approach does not reach the spot', () => {
    expect(words(packet())).not.toContain('does not reach the spot');
    const text = words(packet({ plan: { ...plan, made: false } }));
    expect(text).toContain('this approach does not reach the spot. It is not to be flown.');
    expect(text).toContain('none was found with which the wheels touch at the spot');
  });

  it('changes with what it is computed for, and with nothing else', () => {
    expect(packet()).toBe(packet());
    const windy = planApproach({ ...sampleRequest, wind: { ...sampleRequest.wind, speed: 4 } });
    expect(packet({ plan: windy })).not.toBe(packet());
    expect(JSON.stringify(body)).toContain('To land at the spot.');
  });

  it('lets no title break out of the style sheet or the page', () => {
    const html = packet({ title: '</style><script>alert("x")</script> \\ "quoted"' });
    expect(html).not.toContain('<script>');
    expect(html.match(/<\/style>/g)).toHaveLength(1);
  });

  it('speaks the school’s units', () => {
    const text = words(packet({ units: { height: 'm', distance: 'm', speed: 'km/h' } }));
    expect(text).toMatch(/Wind at 10 m 210° 22 km\/h/);
    expect(text).toMatch(/elevation 95 m/);
  });
});
