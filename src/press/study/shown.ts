import type { PlanRequest } from '../../flight/terms/plan.ts';
import { type Flown, flySetting } from './fly-setting.ts';
import type { StudyPacket } from './study-packet.ts';
import { type Dial, isSame, requestFor, type Setting } from './study-setting.ts';
import { type StudyState, settingOf } from './study-state.ts';

/** The setting that is shown: its flight, and what is drawn over it. */
export interface Shown {
  readonly request: PlanRequest;
  readonly flown: Flown;
  readonly isPrinted: boolean;
  /** `file/row`, or ''. */
  readonly fault: string;
}

/** What a state shows. The last flight is kept, because a state changes for other reasons too. */
export function flightShower(packet: StudyPacket): (state: StudyState) => Shown {
  const { request, flown, dials, home, units } = packet;
  let last = { setting: home, request, flown };
  const fly = (setting: Setting) => {
    if (isSame(setting, home)) return { setting, request, flown };
    if (isSame(setting, last.setting)) return last;
    const wanted = requestFor(setting, request, dials, units);
    last = { setting, request: wanted, flown: flySetting(wanted, units) };
    return last;
  };
  return (state) => {
    const setting = settingOf(state);
    if ('wrong' in setting) return { request, flown: noFlight(setting.wrong), isPrinted: false, fault: '' };
    return { ...fly(setting), isPrinted: isSame(setting, home), fault: state.fault };
  };
}

/** True where nothing in the page has to be drawn again. */
export function isSameShown(one: Shown, other: Shown): boolean {
  return one.flown === other.flown && one.isPrinted === other.isPrinted && one.fault === other.fault;
}

function noFlight({ label, unit, least, most }: Dial): Flown {
  return {
    given: false,
    plan: undefined,
    why: `${label}: a number from ${least} to ${most} ${unit}.`,
  };
}
