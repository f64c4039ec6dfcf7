import { kinds } from '../components/exercises/kinds.ts';
import type { QuestionSetting } from '../components/exercises/question-setting.ts';
import { randomFrom } from '../src/flight/numerics/random.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';
import type { AirfieldFile } from '../src/school/airfield.ts';
import { type AircraftId, requestFor } from './flight-school.ts';

// For tests: questions drawn for a flight at the demonstration airfield, and figures read back from their words.

export function settingFor(id: AircraftId, changes: Partial<PlanRequest> = {}): QuestionSetting {
  const request = requestFor(id, changes);
  const units = { height: 'ft', distance: 'm', speed: 'kt' } as const;
  return { plan: planApproach(request), request, units, airfield: request.airfield as AirfieldFile };
}

/** A question as its reader sees it: plain spaces, and the text of the right choice. */
export interface Asked {
  readonly question: string;
  readonly right: string;
  readonly choices: readonly { readonly text: string; readonly fault?: string | undefined }[];
  readonly rows: readonly (readonly string[])[];
  readonly working: readonly string[];
}

/** The questions of one kind that the first `seeds` seeds draw; those that a seed does not give are left out. */
export function questionsOf(kind: string, setting: QuestionSetting, seeds = 20): Asked[] {
  return Array.from({ length: seeds }, (_, seed) => kinds[kind]!.draw(setting, randomFrom(seed))).flatMap(
    (drawn) => {
      if (!drawn) return [];
      const choices = drawn.choices.map(({ text, fault }) => ({ text: plain(text), fault }));
      return [
        {
          question: plain(drawn.question),
          right: choices[drawn.answer]!.text,
          choices,
          rows: (drawn.table?.rows ?? []).map((row) => row.map(plain)),
          working: drawn.working.map(plain),
        },
      ];
    },
  );
}

/** The number that a pattern's first group finds in a text. */
export function figureIn(text: string, pattern: RegExp): number {
  const found = pattern.exec(text)?.[1];
  if (found === undefined) throw new Error(`No ${pattern} in: ${text}`);
  return Number(found.replaceAll(',', '').replace('−', '-'));
}

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
