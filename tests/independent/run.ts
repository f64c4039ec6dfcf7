import { parseArgs } from 'node:util';
import type { PlanRequest } from '../../src/flight/terms/plan.ts';
import type { Contradiction, Kind } from './contradiction.ts';
import { allKinds, refute, requestOf } from './refute.ts';
import { simplified } from './simplify.ts';

/*
 * `npm run refute -- --cases 200 --seed 1`: tries random aircraft, airfields, winds, approaches and obstacles for a plan, a
 * clearance or a gate that this second simulator contradicts. Exits 1 where there is one.
 * `--kinds made,obstacle` looks for those alone. `--json` adds the plainest
 * request found that shows the same.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    kinds: { type: 'string', default: allKinds.join(',') },
    json: { type: 'boolean', default: false },
  },
});
const [cases, seed] = [Number(values.cases), Number(values.seed)];
if (!(Number.isInteger(cases) && cases > 0 && Number.isInteger(seed) && seed >= 0)) {
  process.stderr.write('cases must be a whole number of 1 or more, seed one of 0 or more\n');
  process.exit(2);
}

const kinds = allKinds.filter((kind) => values.kinds.split(',').includes(kind));
if (kinds.length === 0) {
  process.stderr.write(`kinds are some of: ${allKinds.join(', ')}\n`);
  process.exit(2);
}

const results = new Map<string, number>();
const contradicted = new Map<Kind, number>();
const count = <Of>(map: Map<Of, number>, of: Of, by = 1) => map.set(of, (map.get(of) ?? 0) + by);
for (let i = seed; i < seed + cases; i++) {
  const request = requestOf(i);
  const { result, gates, obstacles, contradictions } = refute(request, kinds);
  count(results, result);
  count(results, 'gates', gates);
  count(results, 'obstacles', obstacles);
  for (const contradiction of contradictions) {
    const { kind, says } = contradiction;
    count(contradicted, kind);
    process.stdout.write(`case ${i}, ${request.approach}: ${kind}: ${says}\n`);
    if (values.json) process.stdout.write(`${JSON.stringify(plainest(contradiction))}\n`);
  }
}

/** For gates, the same key must be wrong. */
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
process.stdout.write(
  contradicted.size > 0 ? `contradicted: ${listed(contradicted)}\n` : 'nothing contradicted\n',
);
process.exitCode = contradicted.size > 0 ? 1 : 0;
