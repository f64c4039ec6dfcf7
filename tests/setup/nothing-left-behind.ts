import { afterAll, expect } from 'vitest';
import { leftBehind, markOwn } from '../left-behind.ts';

// Of every file of tests: whatever it has started has ended with it.

markOwn();
// It comes before those of the file, and so is called after them.
afterAll(async () => {
  expect(await leftBehind(), 'processes that these tests have left behind').toEqual([]);
});
