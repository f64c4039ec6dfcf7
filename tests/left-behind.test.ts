import { spawn } from 'node:child_process';
import { expect, it } from 'vitest';
import { leftBehind } from './left-behind.ts';

it.runIf(process.platform === 'linux')(
  'a process that is left behind is named, until it has ended',
  async () => {
    expect(await leftBehind(0)).toEqual([]);
    const left = spawn('sleep', ['600']);
    expect(await leftBehind(0)).toEqual([`${left.pid} sleep 600`]);
    left.kill();
    expect(await leftBehind()).toEqual([]);
  },
);

it.runIf(process.platform === 'linux')('one is found whose own parent has ended', async () => {
  const parent = spawn('sh', ['-c', 'sleep 600 & echo $!'], { stdio: ['ignore', 'pipe', 'ignore'] });
  const pid = await new Promise<number>((resolve) =>
    parent.stdout.once('data', (text) => resolve(Number(text))),
  );
  await expect.poll(() => leftBehind(0)).toEqual([`${pid} sleep 600`]);
  process.kill(pid);
  expect(await leftBehind()).toEqual([]);
});
