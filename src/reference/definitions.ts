import type { z } from 'zod';
import { frontMatter } from '../lesson/front-matter.ts';
import { aircraft } from '../school/aircraft.ts';
import { airfield } from '../school/airfield.ts';
import { faults } from '../school/faults.ts';
import { handbooks } from '../school/handbooks.ts';
import { settings } from '../school/school.ts';

/** Something an author types as keys and values, with the definition that checks it. */
export interface AuthorDefinition {
  readonly title: string;
  /** Which files it is for, and what they say; without a full stop. */
  readonly about: string;
  readonly definition: z.ZodType;
}

export const schoolFiles = {
  aircraft: {
    title: 'An aircraft',
    about: 'A file in `fleet/` for each aircraft; lessons call it by the name of the file',
    definition: aircraft,
  },
  airfield: {
    title: 'An airfield',
    about: 'A file in `airfields/` for each airfield; lessons call it by the name of the file',
    definition: airfield,
  },
  faults: {
    title: 'Faults',
    about: 'A file in `faults/` for each table of common faults',
    definition: faults,
  },
  handbooks: {
    title: 'Published handbooks beside the lessons',
    about:
      'The file `handbooks.yaml`, which a school need not have: what published handbooks teach, and which lesson treats it; `chalkwing check` holds it against the lessons, and the page of checks prints it',
    definition: handbooks,
  },
  school: {
    title: 'The school',
    about:
      'The file `school.yaml`: what holds for every lesson that does not say otherwise, and the handbook',
    definition: settings,
  },
} as const satisfies Record<string, AuthorDefinition>;

export const lessonHead: AuthorDefinition = {
  title: 'The head of a lesson',
  about: 'What stands between the two lines `---` at the top of a lesson',
  definition: frontMatter,
};
