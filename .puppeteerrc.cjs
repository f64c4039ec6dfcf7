// What puppeteer's install script fetches: the browser that prints and no other, and nothing where the packages hold
// one.
const { subscribe } = require('node:diagnostics_channel');

// The script waits for ever for a server that does not answer; it reads this file in its own process.
if (process.env.npm_lifecycle_event === 'postinstall') {
  const unanswered = setTimeout(() => {
    console.warn('No browser was fetched: its server does not answer. See "A browser" in DEVELOPERS.md.');
    process.exit(0);
  }, 20_000);
  unanswered.unref();
  subscribe('http.client.response.finish', () => clearTimeout(unanswered));
}

module.exports = {
  skipDownload: process.platform === 'linux' && process.arch === 'x64',
  chrome: { skipDownload: true },
};
