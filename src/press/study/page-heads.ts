import type { Plan } from '../../flight/terms/plan.ts';
import { dayAsked } from '../packet/day-asked.ts';
import { gradeBands, screenBand } from '../packet/grade-bands.ts';
import { packetCautions } from '../packet/packet-cautions.ts';
import { subjectLine } from '../packet/setting.ts';
import { settingList } from '../packet/sheet-parts.ts';
import { LivePart } from './live-part.ts';
import { element, pageElements } from './page-nodes.ts';
import { settingWords } from './setting-words.ts';
import type { Shown } from './shown.ts';
import type { StudyPacket } from './study-packet.ts';

const bands = '.page-band, .grade-band';

/** What is above the lesson: the bands of the grade, the setting, the cautions; and the title of the window. */
export function pageHeads({ plan: printed, school, rules, day, units }: StudyPacket): (shown: Shown) => void {
  const partAt = (place: string) => new LivePart([...document.querySelectorAll(place)]);
  const setting = partAt('.masthead .setting');
  const cautions = partAt('.packet-cautions');
  const printedBands = [...document.querySelectorAll(bands)];
  const title = document.title;

  const cautionsOf = (plan: Plan) =>
    pageElements([packetCautions({ plan, units, school, rules }, day && dayAsked(plan, day, units))]);
  const standingCautions = () =>
    pageElements([
      packetCautions(
        { plan: { ...printed, cautions: [] }, units, school, rules },
        day && { ...dayAsked(printed, day, units), breaches: [] },
      ),
    ]);

  return ({ flown, isPrinted }) => {
    const { plan } = flown;
    putBands(isPrinted ? printedBands : bandsOf(plan));
    document.querySelector('.study-moved')?.remove();
    document.title = title;
    if (isPrinted) {
      setting.restore();
      cautions.restore();
      return;
    }
    const printedWords = `The printed packet is for ${settingWords(printed, units)}; the words around the figures stay as they were written for it. Beside what was made for this setting stands a line, beside what stays as printed a dashed one.`;
    if (!plan) {
      const why = flown.given ? '' : flown.why;
      setting.show([
        element('p', 'study-refusal', `There is no flight of this setting. ${why} ${printedWords}`),
      ]);
      const standing = standingCautions();
      standing[0]?.append(
        element('p', 'study-refusal', 'There is no flight of this setting, and so no caution of it.'),
      );
      cautions.show(standing);
      return;
    }
    setting.show(pageElements([settingList(plan, units)]));
    setting.place?.before(
      element('p', 'study-moved', `Set on this page: ${settingWords(plan, units)}. ${printedWords}`),
    );
    cautions.show(cautionsOf(plan));
    document.title = `${title.split(' — ')[0]} — ${subjectLine(plan, units)}, set on this page`;
  };

  function bandsOf(plan: Plan | undefined): Element[] {
    return plan ? pageElements([...screenBand(plan, units), ...gradeBands(plan, units)]) : [];
  }
}

/** Puts them above the title, in place of those that are there. */
function putBands(next: readonly Element[]): void {
  for (const each of document.querySelectorAll(bands)) each.remove();
  document.querySelector('.masthead')?.before(...next);
}
