import type { PacketContext } from '../../../components/context.ts';
import type { DrawingBoard } from '../../drawing/kit/drawing.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { type Flown, flySetting } from './fly-setting.ts';
import { contextMaker } from './study-context.ts';
import type { StudyData } from './study-data.ts';
import { type Dials, dialsOf, type Printed, printedSetting, type Setting } from './study-setting.ts';

/** The packet that the page was printed as, with its flight flown again here. */
export interface StudyPacket extends StudyData, Printed {
  readonly flown: Flown;
  readonly units: PageUnits;
  readonly dials: Dials;
  /** Its own setting. */
  readonly home: Setting;
  /** What directives are rendered from, for any flight of the page. */
  readonly contextOf: (request: PlanRequest, plan: Plan) => PacketContext;
}

/** Undefined where the printed flight cannot be flown here: then nothing in the page may be changed. */
export function openPacket(data: StudyData, board: DrawingBoard): StudyPacket | undefined {
  const { request, school } = data;
  const flown = flySetting(request, data.school.units, true);
  if (!flown.given) return undefined;
  const { plan } = flown;
  const { units } = school;
  const dials = dialsOf({ request, plan }, units);
  const home = printedSetting(dials, request);
  return { ...data, plan, flown, units, dials, home, contextOf: contextMaker(data, board) };
}
