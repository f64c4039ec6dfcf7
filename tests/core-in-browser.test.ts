import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planToJson } from '../src/export/plan-json.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';
import { requestFor, windOffRunway } from './flight-school.ts';
import { openScreen, type Screen } from './screen.ts';

/*
 * The core uses nothing that a browser lacks: it is bundled as it is, loaded into a page, and asked there, in JSON,
 * what it is asked here. ECMA-262 leaves the last bit of Math.sin, Math.cos and Math.pow (that is, of **) to the
 * engine, and the engines of Node 20 and Chromium 147 do differ in it; src/flight/numerics/steady-math.ts makes them
 * from functions in which the engines agree, so that the text is the same to the last digit.
 */

const room = fileURLToPath(new URL('../src/flight/', import.meta.url));

/** One script that answers a request in JSON with a plan in JSON. */
async function bundledCore(): Promise<string> {
  const { outputFiles } = await build({
    stdin: {
      contents: `
        import { planApproach } from './plan/planner.ts';
        import { planToJson } from '../export/plan-json.ts';
        globalThis.planInJson = (asked) => JSON.stringify(planToJson(planApproach(JSON.parse(asked))));`,
      resolveDir: room,
      loader: 'ts',
    },
    bundle: true,
    // For the browser and without polyfills: a core that used Node or a package would fail to bundle.
    platform: 'browser',
    format: 'iife',
    packages: 'external',
    write: false,
    logLevel: 'silent',
  });
  return outputFiles[0]!.text;
}

const wind = windOffRunway(-28, 12);
const requests: readonly PlanRequest[] = (['90', '180', '360', 'spiral'] as const).map((approach) =>
  requestFor('osier', { approach, wind }),
);

let screen: Screen;
let page: Page;
let bundle: string;
const complaints: string[] = [];

beforeAll(async () => {
  bundle = await bundledCore();
  screen = await openScreen();
  page = await screen.show('<!doctype html><title>Empty</title>', 1280);
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.addScriptTag({ content: bundle });
});

afterAll(() => screen?.close());

/** Sent as text, because a TypeScript loader may put its own helpers into a function. */
const inBrowser = (asked: string): Promise<string> =>
  page.evaluate(`planInJson(${JSON.stringify(asked)})`) as Promise<string>;

const inNode = (asked: string): string =>
  JSON.stringify(planToJson(planApproach(JSON.parse(asked) as PlanRequest)));

describe('the core in a browser', () => {
  it('is bundled without a package, a polyfill or anything of Node', () => {
    expect(bundle).not.toMatch(/\brequire\(|\bprocess\.|\bBuffer\b|node:/);
  });

  const each = it.each(requests.map((request) => [request.approach, request] as const));

  each('plans the %s approach to the same text as in Node, to the last digit', async (_approach, request) => {
    const asked = JSON.stringify(request);
    const there = await inBrowser(asked);
    expect(JSON.parse(there).touchdown.along).toBeCloseTo(0, 1);
    expect(there).toBe(inNode(asked));
    expect(complaints).toEqual([]);
  });

  it('refuses there what it refuses here, in the same words', async () => {
    const asked = JSON.stringify({ ...requests[1]!, height: 1 });
    const words = await page.evaluate(
      `try { planInJson(${JSON.stringify(asked)}) } catch (error) { error.name + ': ' + error.message }`,
    );
    let ours = '';
    try {
      inNode(asked);
    } catch (error) {
      ours = String(error);
    }
    expect(ours).toContain('RequestError');
    expect(words).toBe(ours);
  });
});
