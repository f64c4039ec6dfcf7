import { channel } from 'node:diagnostics_channel';
import { createRequire } from 'node:module';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

/*
 * What puppeteer's install script does in a clone is decided by .puppeteerrc.cjs, which it reads in its own process.
 */

const load = createRequire(import.meta.url);
const file = load.resolve('../.puppeteerrc.cjs');
const read = () => {
  delete load.cache[file];
  return load(file) as { skipDownload: boolean; chrome: { skipDownload: boolean } };
};
const exit = vi.spyOn(process, 'exit').mockReturnValue(undefined as never);
const warn = vi.spyOn(console, 'warn').mockReturnValue(undefined);

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllEnvs();
  vi.clearAllMocks();
});

describe('the browser that an install fetches', () => {
  it('is the headless shell alone, and none where the packages hold one', () => {
    const { skipDownload, chrome } = read();
    expect(chrome.skipDownload).toBe(true);
    expect(skipDownload).toBe(process.platform === 'linux' && process.arch === 'x64');
  });

  it('is not waited for where nobody answers, and the install is no failure', () => {
    vi.stubEnv('npm_lifecycle_event', 'postinstall');
    read();
    vi.advanceTimersByTime(19_999);
    expect(exit).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1);
    expect(exit).toHaveBeenCalledExactlyOnceWith(0);
    expect(warn).toHaveBeenCalledWith(expect.stringContaining('does not answer'));
  });

  it('is waited for once it comes', () => {
    vi.stubEnv('npm_lifecycle_event', 'postinstall');
    read();
    channel('http.client.response.finish').publish({});
    vi.runAllTimers();
    expect(exit).not.toHaveBeenCalled();
  });

  it('ends nothing where the file is read to print', () => {
    vi.stubEnv('npm_lifecycle_event', 'test');
    read();
    vi.runAllTimers();
    expect(exit).not.toHaveBeenCalled();
  });
});
