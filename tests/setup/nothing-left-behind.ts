import { afterAll, expect } from 'vitest';
import { leftBehind, markOwn } from '../left-behind.ts';

// For every test file: whatever it has started has ended with it.

markOwn();
// This is registered before the hooks of the file, and so is called after them.
afterAll(async () => {
  expect(await leftBehind(), 'processes that these tests have left behind').toEqual([]);
});
