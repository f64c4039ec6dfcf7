/** What was read of a METAR and what to type instead, in words for the person who typed it. */
export class MetarError extends Error {
  override readonly name = 'MetarError';
}

/**
 * The groups of a METAR that a lesson needs, each in a form that the code allows; undefined where the report has
 * none. WMO-No. 306, Manual on Codes, FM 15 METAR, gives the forms.
 */
export interface MetarGroups {
  readonly station: string;
  readonly time: string;
  /** `25009KT`, `25009G19MPS`, `VRB02KT`, or with slashes where it was not measured. */
  readonly wind: string | undefined;
  /** Both extremes of the direction, `210V280`. */
  readonly extremes: string | undefined;
  /** `18/11`, `M12/M15`, `10///`. */
  readonly temperature: string | undefined;
  /** `Q0995` or `A2992`; a report may have both. */
  readonly pressures: readonly string[];
}

/** An invented report, for messages. */
const example = '`METAR XXXX 251150Z 21012G22KT 9999 FEW030 18/11 Q1013`';

/** What begins a part about something other than the field at this hour: trend forecasts and remarks. */
const bodyEnd = /^(?:RMK|NOSIG|BECMG|TEMPO|INTER|PROB\d\d)$/;

interface Form {
  readonly what: string;
  /** What looks as if it was meant to be this group. */
  readonly meant: RegExp;
  readonly right: RegExp;
  readonly advice: string;
}

const windForm: Form = {
  what: 'wind',
  meant: /(?:KTS?|MPS|M\/S|KMH|KPH|KM\/H|MPH)$/,
  right: /^(?:\d{3}|VRB|\/{3})(?:\d\d|\/\/)(?:G(?:\d\d|\/\/))?(?:KT|MPS|KMH)$/,
  advice: 'three figures of direction, two of speed, then KT, MPS or KMH, such as `25009KT` or `25009G19KT`',
};
const temperatureForm: Form = {
  what: 'temperature',
  meant: /^[M+\-−]?\d{1,3}(?:\.\d+)?\/(?:[M+\-−]?[\d.]*|\/\/|XX)$/,
  right: /^M?\d\d\/(?:M?\d\d|\/\/|XX)?$/,
  advice: 'temperature and dew point in two figures each, M for minus, such as `18/11` or `M02/M05`',
};
const pressureForm: Form = {
  what: 'pressure',
  meant: /^(?:Q|A(?=[\d./]))/,
  right: /^[QA](?:\d{4}|\/{4})$/,
  advice: '`Q0995` for 995 hPa, or `A2992` for 29.92 inches of mercury',
};

/**
 * Picks these groups out of a report. Trend forecasts and remarks are ignored.
 * @throws MetarError where it is not a METAR, or a group has a form that the code does not know: it never guesses.
 */
export function metarGroups(text: string): MetarGroups {
  const report = text.trim().toUpperCase().replace(/=+$/, '');
  const parts = /^(?:(?:METAR|SPECI)\s+)?(?:COR\s+)?([A-Z][A-Z0-9]{3})\s+(\d{6}Z)(?:\s+(.*))?$/su.exec(
    report,
  );
  if (!parts) throw new MetarError(notOne(text.trim()));
  const [, station, time, rest = ''] = parts;
  if (rest.includes('=')) throw new MetarError('There is more than one report here: give one METAR');
  const all = rest.split(/\s+/);
  const end = all.findIndex((group) => bodyEnd.test(group));
  const body = end < 0 ? all : all.slice(0, end);
  if (body[0] === 'NIL') {
    throw new MetarError(
      `The METAR of ${station} is \`NIL\`, no report: give one with a wind, such as ${example}`,
    );
  }
  return {
    station: station!,
    time: time!,
    wind: onlyOne(body, windForm),
    extremes: body.find((group) => /^\d{3}V\d{3}$/.test(group)),
    temperature: onlyOne(body, temperatureForm),
    pressures: ofForm(body, pressureForm).filter((group) => !group.includes('/')),
  };
}

function notOne(typed: string): string {
  const start = typed.length > 50 ? `${typed.slice(0, 50)}…` : typed;
  const what = /^TAF\b/i.test(typed) ? 'is a forecast (TAF), not a METAR' : 'is not a METAR';
  return `\`${start}\` ${what}: give a report with its station and time first, such as ${example}`;
}

function onlyOne(body: readonly string[], form: Form): string | undefined {
  const [first, second] = [...new Set(ofForm(body, form))];
  if (second === undefined) return first;
  throw new MetarError(`The METAR has two groups of ${form.what}, \`${first}\` and \`${second}\`: leave one`);
}

function ofForm(body: readonly string[], { what, meant, right, advice }: Form): string[] {
  const found = body.filter((group) => meant.test(group));
  const wrong = found.find((group) => !right.test(group));
  if (wrong === undefined) return found;
  throw new MetarError(`\`${wrong}\` cannot be read as the ${what} of a METAR: write ${advice}`);
}
