import { parseArgs } from 'node:util';
import type { PlanRequest } from '../../src/flight/plan.ts';
import type { Contradiction, Kind } from './contradiction.ts';
import { refute, requestOf } from './refute.ts';
import { simplified } from './simplify.ts';

/*
 * `npm run refute -- --cases 200 --seed 1`: tries random aircraft, airfields, winds, approaches and obstacles for a plan, a
 * clearance or a gate that this second simulator contradicts. Exits 1 where there is one. `--json` adds the plainest
 * request found that shows the same.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    json: { type: 'boolean', default: false },
  },
});
const [cases, seed] = [Number(values.cases), Number(values.seed)];
if (!(Number.isInteger(cases) && cases > 0 && Number.isInteger(seed) && seed >= 0)) {
  process.stderr.write('cases must be a whole number of 1 or more, seed one of 0 or more\n');
  process.exit(2);
}

const results = new Map<string, number>();
const kinds = new Map<Kind, number>();
const count = <Of>(map: Map<Of, number>, of: Of, by = 1) => map.set(of, (map.get(of) ?? 0) + by);
for (let i = seed; i < seed + cases; i++) {
  const request = requestOf(i);
  const { result, gates, obstacles, contradictions } = refute(request);
  count(results, result);
  count(results, 'gates', gates);
  count(results, 'obstacles', obstacles);
  for (const contradiction of contradictions) {
    const { kind, says } = contradiction;
    count(kinds, kind);
    process.stdout.write(`case ${i}, ${request.approach}: ${kind}: ${says}\n`);
    if (values.json) process.stdout.write(`${JSON.stringify(plainest(contradiction))}\n`);
  }
}

/** Of gates, the same key must be wrong. */
function plainest({ kind, says, request }: Contradiction): PlanRequest {
  const about = says.split(':')[0];
  return simplified(request, (tried) =>
    refute(tried, [kind]).contradictions.some(
      (other) => other.kind === kind && other.says.split(':')[0] === about,
    ),
  );
}

const listed = (map: ReadonlyMap<string, number>) =>
  [...map].map(([name, number]) => `${number} ${name}`).join(', ');
process.stdout.write(`${cases} cases from seed ${seed}: ${listed(results)}\n`);
process.stdout.write(kinds.size > 0 ? `contradicted: ${listed(kinds)}\n` : 'nothing contradicted\n');
process.exitCode = kinds.size > 0 ? 1 : 0;
