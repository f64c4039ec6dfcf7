import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  ConflictAnswer,
  DeskPage,
  FileAnswer,
  FileEvent,
  FilesAnswer,
  PageAnswer,
  PageRequest,
  Part,
  PrintAnswer,
  SavedAnswer,
  WordsAnswer,
} from '../src/desk/api.ts';
import { LiveSchools } from '../src/desk/server/live-school.ts';
import { type Desk, openDesk } from '../src/desk/server/open-desk.ts';
import { SchoolFiles } from '../src/desk/server/school-files.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { buildLesson } from '../src/press/packet/build.ts';
import { readSchool } from '../src/school/read.ts';

const lessons = fileURLToPath(new URL('../lessons', import.meta.url));
const date = new Date('2031-05-06T00:00:00Z');
const version = 'trial';
const logged: string[] = [];

let home: string;
let folder: string;
let desk: Desk;
const at = (path: string) => join(folder, path);

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'chalkwing-desk-'));
  folder = join(home, 'lessons');
  await cp(lessons, folder, { recursive: true });
  await writeFile(join(home, 'secret.md'), 'outside');
  await mkdir(join(home, 'out', 'one'), { recursive: true });
  await writeFile(join(home, 'out', 'one', 'osier-15.pdf'), '%PDF-1.7 trial');
  await writeFile(join(home, 'outside.pdf'), '%PDF-1.7 outside');
  await writeFile(join(home, 'out', 'one', 'page.html'), '<p>trial</p>');
  desk = await openDesk({
    folder,
    out: join(home, 'out'),
    browser: join(home, 'no-browser'),
    port: 0,
    version,
    today: () => date,
    log: (text) => void logged.push(text),
  });
});
afterAll(async () => {
  await desk?.close();
  await rm(home, { recursive: true, force: true });
});

interface Asked {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
}
interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** As it is given, whatever a browser would forbid: `fetch` cannot set Host and Origin. */
function ask(path: string, { method = 'GET', headers = {}, body }: Asked = {}): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const sent = httpRequest(
      { host: '127.0.0.1', port: desk.port, path, method, headers, agent: false },
      (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('error', reject);
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            text: Buffer.concat(parts).toString('utf8'),
          }),
        );
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

const own = () => ({ 'x-desk-token': desk.token });
const json = { 'content-type': 'application/json' };
const get = (path: string) => ask(path, { headers: own() });
const send = (method: string, path: string, value: unknown) =>
  ask(path, { method, headers: { ...own(), ...json }, body: JSON.stringify(value) });
const read = async (path: string): Promise<FileAnswer> =>
  JSON.parse((await get(`/file?path=${encodeURIComponent(path)}`)).text);
const save = (path: string, text: string, from: string | null) =>
  send('PUT', '/file', { path, text, version: from });
const page = async (request: PageRequest): Promise<PageAnswer> => {
  const { status, text } = await send('POST', '/page', request);
  expect(status, text).toBe(200);
  return JSON.parse(text);
};

describe('the desk lets in', () => {
  it('nobody by another name than its own', async () => {
    for (const host of ['evil.example', `evil.example:${desk.port}`, '127.0.0.1', `[::1]:${desk.port}`]) {
      const { status, text } = await ask('/files', { headers: { ...own(), host } });
      expect(status, host).toBe(403);
      expect(JSON.parse(text).error).toMatch(/by no other name/);
    }
    const host = `localhost:${desk.port}`;
    expect((await ask('/files', { headers: { ...own(), host } })).status).toBe(200);
  });

  it("no other site's page, even with the token", async () => {
    const foreign: Readonly<Record<string, string>>[] = [
      { origin: 'http://evil.example' },
      { origin: 'null' },
      { origin: 'http://127.0.0.1:1' },
      { 'sec-fetch-site': 'cross-site' },
      // Another server of this machine: its pages are sent the cookie too.
      { 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' },
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'iframe' },
    ];
    for (const headers of foreign) {
      expect((await ask('/files', { headers: { ...own(), ...headers } })).status).toBe(403);
    }
    expect((await ask(`/?token=${desk.token}`, { headers: foreign[5]! })).status).toBe(403);
    const origin = `http://127.0.0.1:${desk.port}`;
    const headers = { ...own(), origin, 'sec-fetch-site': 'same-origin' };
    expect((await ask('/files', { headers })).status).toBe(200);
  });

  it('nobody without the token, and gives its cookie for it', async () => {
    for (const path of ['/', '/?token=wrong', '/files', `/files?token=${desk.token}`, '/events', '/app.js'])
      expect((await ask(path)).status, path).toBe(401);
    const headers = { 'x-desk-token': `${desk.token}x` };
    expect((await ask('/files', { headers })).status).toBe(401);
    const first = await ask(`/?token=${desk.token}`);
    // The page's own file belongs to another room: without it the gate still lets the address in.
    expect([200, 404]).toContain(first.status);
    const cookies = first.headers['set-cookie'];
    expect(cookies).toHaveLength(1);
    expect(cookies![0]).toMatch(
      new RegExp(`^chalkwing-desk-${desk.port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict$`),
    );
    expect(cookies![0]).not.toContain(desk.token);
    const cookie = cookies![0]!.split(';')[0]!;
    expect((await ask('/files', { headers: { cookie } })).status).toBe(200);
    expect((await ask('/files', { headers: { cookie: `${cookie}x` } })).status).toBe(401);
  });

  it('listens on the loopback address of this machine alone', async () => {
    const refused = (host: string) =>
      new Promise<boolean>((resolve) => {
        const socket = connect({ host, port: desk.port });
        socket.on('connect', () => resolve(false)).on('error', () => resolve(true));
        socket.on('connect', () => socket.destroy());
      });
    expect(await refused('127.0.0.1')).toBe(false);
    expect(await refused('::1')).toBe(true);
    expect(await refused('127.0.0.2')).toBe(true);
  });
});

describe('an answer of the desk', () => {
  it('has the strict headers, refused or not', async () => {
    for (const { headers } of [await get('/files'), await ask('/files'), await get('/nothing')]) {
      const policy = String(headers['content-security-policy']).split('; ');
      expect(policy).toEqual(
        expect.arrayContaining(["default-src 'none'", "script-src 'self'", "connect-src 'self'"]),
      );
      expect(policy).toEqual(expect.arrayContaining(["frame-ancestors 'self'", "base-uri 'none'"]));
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
      });
      expect(headers['access-control-allow-origin']).toBeUndefined();
    }
  });

  it('refuses what is too long, of another type, or no JSON, and stays up', async () => {
    const post = (type: string, body: string | Buffer) =>
      ask('/page', { method: 'POST', headers: { ...own(), 'content-type': type }, body });
    expect((await post('text/plain', '{"path":"school.yaml"}')).status).toBe(415);
    expect((await post('application/x-www-form-urlencoded', 'a=b')).status).toBe(415);
    expect((await post('application/json', '{"path":')).status).toBe(400);
    expect((await post('application/json', Buffer.from([0x22, 0xff, 0x22]))).status).toBe(400);
    expect((await post('application/json', '{"path":1}')).status).toBe(400);
    expect((await post('application/json', '{"path":"school.yaml","more":1}')).status).toBe(400);
    expect((await post('application/json', `${'['.repeat(200_000)}`)).status).toBe(400);
    const long = JSON.stringify({ path: 'school.yaml', text: 'x'.repeat(2 * 2 ** 20) });
    expect((await post('application/json', long)).status).toBe(413);
    expect((await ask('/page', { method: 'OPTIONS', headers: own() })).status).toBe(404);
    expect((await get('/files')).status).toBe(200);
    expect(logged).toEqual([]);
  });

  it('to a body without a length that never ends is 413, then the end of the line', async () => {
    const head = `POST /page HTTP/1.1\r\nHost: 127.0.0.1:${desk.port}\r\nX-Desk-Token: ${desk.token}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n`;
    const part = `${(2 ** 16).toString(16)}\r\n${'x'.repeat(2 ** 16)}\r\n`;
    const said = await new Promise<string>((resolve) => {
      let text = '';
      // As much as the connection takes, and more as soon as it takes more.
      const more = () => {
        while (socket.writable && socket.write(part));
      };
      const socket = connect(desk.port, '127.0.0.1', () => {
        socket.write(head);
        more();
      });
      socket.on('drain', more);
      socket.on('data', (bytes) => {
        text += bytes;
      });
      socket.on('error', () => undefined);
      socket.on('close', () => resolve(text));
    });
    expect(said).toMatch(/^HTTP\/1\.1 413 /);
  });
});

describe('the files of a school', () => {
  it('are those that an instructor writes, and no others', async () => {
    await mkdir(at('fleet/more'), { recursive: true });
    for (const name of ['.hidden.md', 'notes.txt', 'fleet/more/x.yaml', 'other.yaml'])
      await writeFile(at(name), 'x: y');
    const { files }: FilesAnswer = JSON.parse((await get('/files')).text);
    expect(files[0]).toEqual({ path: 'school.yaml', kind: 'school', id: 'school' });
    expect(files).toContainEqual({ path: 'power-off-180.md', kind: 'lesson', id: 'power-off-180' });
    expect(files).toContainEqual({ path: 'fleet/osier-15.yaml', kind: 'aircraft', id: 'osier-15' });
    expect(files.map(({ path }) => path).filter((path) => /hidden|notes|more|other/.test(path))).toEqual([]);
  });

  const outside = [
    '../secret.md',
    'fleet/../../secret.md',
    './power-off-180.md',
    '/etc/passwd',
    '..\\secret.md',
    'fleet\\osier-15.yaml',
    '..%2fsecret.md',
    '%2e%2e/secret.md',
    'power-off-180.md\0.txt',
    'power-off-180.md\0',
    '.hidden.md',
    'fleet/.osier-15.yaml',
    'fleet/more/x.yaml',
    'notes.txt',
    'other.yaml',
    'fleet/osier-15.md',
    'C:secret.md',
    'nul.md',
    'fleet',
    '',
    '.md',
    'constructor/x.yaml',
  ];

  it.each(outside)('do not hold %j', async (path) => {
    expect((await get(`/file?path=${encodeURIComponent(path)}`)).status).toBe(403);
    expect((await save(path, 'taken', null)).status).toBe(403);
    expect((await send('POST', '/page', { path, text: 'x' })).status).toBe(403);
    expect(await readFile(join(home, 'secret.md'), 'utf8')).toBe('outside');
  });

  it('do not hold what an encoded address leads to', async () => {
    for (const path of ['..%2Fsecret.md', '%2e%2e%2fsecret.md', 'fleet%2f..%2f..%2fsecret.md', '%00'])
      expect((await get(`/file?path=${path}`)).status, path).toBe(403);
  });

  it('do not hold what a link leads out to, be it of a file or of a folder', async () => {
    await symlink(join(home, 'secret.md'), at('linked.md'));
    await symlink(join(home, 'nowhere.md'), at('dangling.md'));
    await rename(at('faults'), join(home, 'faults-outside'));
    await symlink(join(home, 'faults-outside'), at('faults'));
    for (const path of ['linked.md', 'dangling.md', 'faults/final.yaml', 'faults/new.yaml']) {
      expect((await get(`/file?path=${path}`)).status, path).toBe(403);
      expect((await save(path, 'taken', null)).status, path).toBe(403);
    }
    const { files }: FilesAnswer = JSON.parse((await get('/files')).text);
    expect(files.filter(({ path }) => /linked|dangling|faults/.test(path))).toEqual([]);
    expect(await readFile(join(home, 'secret.md'), 'utf8')).toBe('outside');
    expect(await readdir(join(home, 'faults-outside'))).not.toContain('new.yaml');
    await rm(at('faults'));
    await rename(join(home, 'faults-outside'), at('faults'));
    await rm(at('linked.md'));
    await rm(at('dangling.md'));
  });

  it('are saved whole, and made', async () => {
    const made = await save('made.md', 'One.\n', null);
    expect(made.status).toBe(200);
    const { version: first }: SavedAnswer = JSON.parse(made.text);
    expect(await readFile(at('made.md'), 'utf8')).toBe('One.\n');
    const again: SavedAnswer = JSON.parse((await save('made.md', 'Two.\n', first)).text);
    expect(await read('made.md')).toEqual({ path: 'made.md', text: 'Two.\n', version: again.version });
    expect((await readdir(folder)).filter((name) => name.includes('made'))).toEqual(['made.md']);
  });

  it('lose nothing where two write at once: the later save is told what the disk has', async () => {
    const { version: base } = await read('made.md');
    await writeFile(at('made.md'), 'By another editor.\n');
    const refused = await save('made.md', 'Mine.\n', base);
    const conflict: ConflictAnswer = JSON.parse(refused.text);
    expect(refused.status).toBe(409);
    expect(conflict).toMatchObject({ path: 'made.md', text: 'By another editor.\n' });
    expect(await readFile(at('made.md'), 'utf8')).toBe('By another editor.\n');
    expect((await save('made.md', 'New.\n', null)).status).toBe(409);
    expect((await save('made.md', 'Both.\n', conflict.version)).status).toBe(200);
    expect(JSON.parse((await save('gone.md', 'Mine.\n', base)).text)).toMatchObject({
      text: null,
      version: null,
    });
    const { version: now } = await read('made.md');
    const races = await Promise.all(['a', 'b', 'c', 'd'].map((text) => save('made.md', text, now)));
    expect(races.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409]);
  });

  it('keep their line ends and their byte order mark', async () => {
    await writeFile(at('made.md'), '\uFEFFOne\r\nTwo\r\nThree\n\r\nFour');
    const { text, version: base } = await read('made.md');
    expect(text).toBe('One\nTwo\nThree\n\nFour');
    await save('made.md', 'One\nTwo and a half\nThree\n\nFour\n', base);
    expect(await readFile(at('made.md'), 'utf8')).toBe('\uFEFFOne\r\nTwo and a half\r\nThree\n\r\nFour\r\n');
  });

  it('are not opened where they are no text', async () => {
    await writeFile(at('latin.md'), Buffer.from([0x41, 0xe9, 0x0a]));
    expect((await get('/file?path=latin.md')).status).toBe(422);
    await rm(at('latin.md'));
  });

  it('that another program changes are told, with their versions; own saves and mere touches are not', async () => {
    const heard: FileEvent[] = [];
    const stream = await listenTo(heard);
    const { version: base } = await read('made.md');
    const own: SavedAnswer = JSON.parse((await save('made.md', 'Own.\n', base)).text);
    await writeFile(at('fleet/sallow-10.yaml'), await readFile(at('fleet/sallow-10.yaml')));
    await writeFile(at('made.md'), 'Foreign.\n');
    await expect.poll(() => heard.length).toBeGreaterThanOrEqual(1);
    const { version: foreign } = await read('made.md');
    expect(foreign).not.toBe(own.version);
    await rm(at('made.md'));
    await expect.poll(() => heard.length).toBeGreaterThanOrEqual(2);
    // Whatever else there was to tell is told before this.
    await writeFile(at('last.md'), 'Last.\n');
    await expect.poll(() => heard.map(({ path }) => path)).toContain('last.md');
    const { version: last } = await read('last.md');
    expect(heard).toEqual([
      { path: 'made.md', version: foreign },
      { path: 'made.md', version: null },
      { path: 'last.md', version: last },
    ]);
    stream.destroy();
    await rm(at('last.md'));
  });
});

describe('the page of a lesson', () => {
  const path = 'power-off-180.md';
  const prose = 'An engine that stops in the pattern';

  it('put together is the very file that a build writes', async () => {
    const { value: school } = await readSchool(folder, date);
    // The student's is compared with what is printed, below.
    const edition = 'instructor';
    const built = await buildLesson({
      school: school!,
      lesson: 'power-off-180',
      aircraft: ['osier-15'],
      choices: {},
      asked: {},
      editions: [edition],
      paper: 'A4',
      date,
      version,
    });
    const { page: made, setting } = await page({
      path,
      choices: { aircraft: 'osier-15', edition, paper: 'A4' },
    });
    expect(together(made!) === documentHtml(built.packets[0]!.document)).toBe(true);
    expect(setting).toMatchObject({ aircraft: 'osier-15', airfield: 'fallow-reach', runway: '24', edition });
  });

  it('comes again with what has changed alone', async () => {
    const { text } = await read(path);
    expect(text).toContain(prose);
    const first = await page({ path, text });
    const all = keysOf(first.page!);
    const edited = text.replace(prose, `${prose} today`);
    const next = await page({ path, text: edited, have: [...all.keys()] });
    const sent = [...keysOf(next.page!)].filter(([, content]) => content !== undefined);
    // The paragraph; the mark of the inputs in the head of the page and at the foot of each.
    expect(sent).toHaveLength(3);
    expect(sent.filter(([, content]) => content!.includes(`${prose} today`))).toHaveLength(1);
    const whole = new Map([...all, ...sent]);
    const fresh = await page({ path, text: edited });
    expect(together(next.page!, whole) === together(fresh.page!)).toBe(true);
  });

  it('is not there where the lesson has a mistake; the message stands at its place', async () => {
    const { text } = await read(path);
    const lines = text.split('\n');
    const line = lines.findIndex((each) => each.startsWith(prose)) + 1;
    lines[line - 1] = `At :key[fnal] look. ${lines[line - 1]}`;
    const { page: made, messages } = await page({ path, text: lines.join('\n') });
    expect(made === undefined).toBe(true);
    const errors = messages.filter(({ severity }) => severity === 'error');
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatchObject({ path, line, column: 9, endLine: line, endColumn: 13 });
    expect(errors[0]!.reason).toContain('did you mean `final`');
  });

  it('says what can not be chosen, and keeps the lesson out of it', async () => {
    const said = async (choices: PageRequest['choices']) => {
      const { page: made, messages } = await page({ path, choices });
      expect(made === undefined).toBe(true);
      return messages
        .filter(({ choice }) => choice !== undefined)
        .map(({ choice, reason }) => `${choice}: ${reason}`);
    };
    expect(await said({ wind: 'north' })).toEqual([expect.stringMatching(/^wind: .*is not a wind/)]);
    expect(await said({ runway: '09' })).toEqual([expect.stringMatching(/^runway: .*has no runway `09`/)]);
    expect(await said({ aircraft: 'osier' })).toEqual([
      expect.stringMatching(/^aircraft: .*no aircraft `osier`/),
    ]);
    expect(await said({ wind: '210/60kt' })).toEqual([expect.stringMatching(/^wind: Osier 15/)]);
  });

  it('is held anew against the day that its lesson asks for, and says so at the wind that was chosen', async () => {
    const own = (await readFile(join(folder, path), 'utf8')).replace(/^day:.*\n/m, '');
    const asking = (most: string) => own.replace('title:', `day: { most-wind: ${most} }\ntitle:`);
    const said = async (most: string, wind?: string) => {
      const choices = { aircraft: 'osier-15', ...(wind === undefined ? {} : { wind }) };
      const { page: made, messages } = await page({ path, text: asking(most), choices });
      const ofDay = messages.filter(({ ruleId }) => ruleId === 'day');
      const isBroken = together(made!).includes('choose another wind, or another day');
      expect(isBroken).toBe(ofDay.length > 0);
      return ofDay.map(({ choice, line, column }) => choice ?? `${line}:${column}`);
    };
    expect(await said('20 kt')).toEqual([]);
    expect(await said('3 kt')).toEqual(['6:7']);
    expect(await said('10 kt', '240/11kt')).toEqual(['wind']);
  });

  it('of a plan not to be flown bears the band, and the choice that makes it so is told', async () => {
    // 14 kt across the runway; the Osier 15 has a limit of 9 kt.
    const aircraft = 'osier-15';
    const { page: made, messages, setting } = await page({ path, choices: { aircraft, wind: '330/14kt' } });
    expect(together(made!)).toContain('class="grade-band not-to-be-flown"');
    expect(setting!.grade).toBe('not-to-be-flown');
    const told = messages.filter(({ choice }) => choice !== undefined);
    expect(told[0]).toMatchObject({ choice: 'wind', severity: 'error', ruleId: 'not-to-be-flown' });
    // It is not the day that the lesson asks for either.
    expect(told.slice(1).map(({ choice, ruleId }) => `${choice} ${ruleId}`)).toEqual([
      'wind day',
      'wind day',
    ]);
    const sound = await page({ path, choices: { aircraft } });
    expect(together(sound.page!)).not.toContain('class="grade-band');
    expect(sound.setting!.grade).toBe('sound');
  });

  it('of a lesson that sets such a plan has the error at its line, and a note where the lesson shows it', async () => {
    const { text } = await read(path);
    const choices = { aircraft: 'osier-15' };
    const windy = text.replace(/^wind:.*$/m, 'wind: 330/14kt');
    const line = windy.split('\n').findIndex((each) => each.startsWith('wind:')) + 1;
    const told = async (text: string) => {
      const { page: made, messages } = await page({ path, text, choices });
      expect(together(made!)).toContain('NOT TO BE FLOWN');
      return messages.filter(({ ruleId }) => ruleId === 'not-to-be-flown');
    };
    expect(await told(windy)).toEqual([
      expect.objectContaining({ path, line, column: 7, severity: 'error' }),
    ]);
    const shown = windy.replace(/^wind:.*$/m, '$&\nshows: not-to-be-flown');
    expect(await told(shown)).toEqual([expect.objectContaining({ path, line, severity: 'note' })]);
  });

  it('beyond a limit of good practice has a warning at its choice or its line, and no error', async () => {
    const { text } = await read(path);
    const steep = text.replace(/^approach:.*$/m, '$&\nbank: 46 deg');
    const { page: made, messages } = await page({ path, text: steep, choices: { aircraft: 'osier-15' } });
    expect(together(made!)).toContain('class="grade-band beyond-good-practice"');
    expect(messages.filter(({ ruleId }) => ruleId === 'beyond-good-practice')).toEqual([
      expect.objectContaining({ path, severity: 'warning', column: 7 }),
    ]);
  });

  it('is made with the unsaved text of the school, and says what is wrong there', async () => {
    const { text } = await read('fleet/osier-15.yaml');
    const name = 'fleet/osier-15.yaml';
    const renamed = text.replace(/^name: .*$/m, 'name: Trial wing');
    const { page: made } = await page({ path, unsaved: { [name]: renamed } });
    expect(together(made!)).toContain('Trial wing');
    expect(together((await page({ path })).page!)).not.toContain('Trial wing');
    const broken = text.replace(/^name: .*$/m, 'nme: Trial wing');
    const { page: none, messages } = await page({ path, unsaved: { [name]: broken } });
    expect(none === undefined).toBe(true);
    const line = text.split('\n').findIndex((each) => each.startsWith('name: ')) + 1;
    expect(messages.filter((each) => each.path === name)).toContainEqual(
      expect.objectContaining({ line, severity: 'error', reason: expect.stringContaining('nme') }),
    );
    // Its own messages are there while the file itself is being edited.
    const alone = await page({ path: name, text: broken });
    expect(alone.messages).toContainEqual(expect.objectContaining({ path: name, line }));
  });

  it('reads the school as `readSchool` does', async () => {
    const { files, withSoundAircraft } = await readSchool(folder, date);
    const live = new LiveSchools(await SchoolFiles.open(folder));
    const read = await live.read({}, date);
    expect(read.withSoundAircraft).toEqual(withSoundAircraft);
    expect(read.files.map((file) => file.path).sort()).toEqual(files.map((file) => file.path).sort());
    expect((await live.read({}, date)).withSoundAircraft).toBe(read.withSoundAircraft);
  });
});

describe('the words that an editor completes', () => {
  it('are the directives, their attributes and values, the keys of each file, and what this school has', async () => {
    const words: WordsAnswer = JSON.parse((await get('/words')).text);
    const key = words.directives.find(({ name }) => name === 'key')!;
    expect(key).toMatchObject({ form: 'text', colons: ':', holdsText: false });
    expect(key.label!.map(({ value }) => value)).toContain('base-key');
    expect(key.attributes.find(({ name }) => name === 'show')!.values!.map(({ value }) => value)).toContain(
      'height',
    );
    expect(key.snippet).toMatch(/^:key\[\$\{1\|/);
    expect(words.keys.lesson.find(({ name }) => name === 'title')).toMatchObject({ needed: true });
    const approach = words.keys.lesson.find(({ name }) => name === 'approach');
    expect(approach!.values!.map(({ value }) => value)).toEqual(['90', '180', '360', 'spiral']);
    const glide = words.keys.aircraft.find(({ name }) => name === 'glide');
    expect(glide!.words!.map(({ name }) => name)).toContain('stopped');
    expect(words.aircraft.map(({ id }) => id)).toEqual(['osier-15', 'sallow-10', 'withy-80']);
    expect(words.airfields).toContainEqual(
      expect.objectContaining({ id: 'fallow-reach', runways: expect.arrayContaining(['24']) }),
    );
    expect(words.faults.map(({ id }) => id)).toContain('final');
    expect(words.faults.every(({ rows }) => rows.length > 0)).toBe(true);
    expect(words.lessons).toContain('power-off-180');
  });
});

describe('printed packets', () => {
  it('lie where a build puts them; without a browser the page alone, with what to do', async () => {
    const choices = { aircraft: 'osier-15', runway: '24', edition: 'student' };
    const { status, text } = await send('POST', '/print', { path: 'power-off-180.md', choices });
    expect(status, text).toBe(200);
    const printed: PrintAnswer = JSON.parse(text);
    expect(printed.packets).toMatchObject([{ path: 'power-off-180/osier-15', state: 'without-browser' }]);
    expect(printed.packets[0]!.pdf).toBeUndefined();
    expect(printed.packets[0]!.files.map((file) => file.replace(/.*\./, ''))).toEqual(['html', 'txt']);
    expect(printed.noBrowser).toContain('no-browser');
    const { page: shown } = await page({
      path: 'power-off-180.md',
      choices: { ...choices, edition: 'student' },
    });
    const file = join(home, 'out', 'power-off-180', 'osier-15.html');
    expect(asPrinted(await readFile(file, 'utf8')) === together(shown!)).toBe(true);
  });

  it('are none of a lesson that is not there, nor with a choice that cannot be had', async () => {
    expect((await send('POST', '/print', { path: 'none.md' })).status).toBe(404);
    expect((await send('POST', '/print', { path: '../secret.md' })).status).toBe(403);
    const { text } = await send('POST', '/print', { path: 'power-off-180.md', choices: { runway: '09' } });
    const { packets, messages }: PrintAnswer = JSON.parse(text);
    expect(packets.every(({ state }) => state === 'left')).toBe(true);
    expect(messages).toContainEqual(expect.objectContaining({ choice: 'runway', severity: 'error' }));
  });

  it('are shown from their folder alone, and only PDFs', async () => {
    const shown = await get('/printed?path=one/osier-15.pdf');
    expect(shown).toMatchObject({ status: 200, text: '%PDF-1.7 trial' });
    expect(shown.headers['content-type']).toBe('application/pdf');
    await symlink(join(home, 'outside.pdf'), join(home, 'out', 'one', 'linked.pdf'));
    const refused = [
      '../outside.pdf',
      'one/../../outside.pdf',
      'one/linked.pdf',
      'one/page.html',
      '/etc/x.pdf',
      '',
    ];
    for (const path of refused)
      expect((await get(`/printed?path=${encodeURIComponent(path)}`)).status, path).toBe(403);
    expect((await get('/printed?path=one/none.pdf')).status).toBe(404);
  });
});

describe.runIf(process.platform === 'linux')('chalkwing desk', () => {
  it('shows its address, answers at it, and ends with Ctrl-C', async () => {
    const command = fileURLToPath(new URL('../src/cli/chalkwing.js', import.meta.url));
    const started = spawn(process.execPath, [command, 'desk'], { cwd: home });
    const ended = new Promise((resolve) => started.on('exit', (code, signal) => resolve(code ?? signal)));
    const address = await new Promise<string>((resolve) => {
      let said = '';
      started.stdout.on('data', (bytes) => {
        said += bytes;
        const found = /^(http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{43})\n/.exec(said);
        if (found) resolve(found[1]!);
      });
    });
    const { origin, searchParams } = new URL(address);
    const headers = { 'x-desk-token': searchParams.get('token')! };
    expect((await fetch(`${origin}/files`, { headers })).status).toBe(200);
    // One that stays open does not hold it up.
    const stream = await fetch(`${origin}/events`, { headers });
    started.kill('SIGINT');
    expect(await ended).toBe(0);
    await stream.text().catch(() => undefined);
    await expect(fetch(`${origin}/files`, { headers })).rejects.toThrow();
  });

  it('says what to type where there is no such school', async () => {
    const command = fileURLToPath(new URL('../src/cli/chalkwing.js', import.meta.url));
    const started = spawn(process.execPath, [command, 'desk', '--school', 'none'], { cwd: home });
    let said = '';
    started.stderr.on('data', (bytes) => {
      said += bytes;
    });
    const code = await new Promise((resolve) => started.on('close', resolve));
    expect(code).toBe(1);
    expect(said).toBe('There is no folder `none`. Name the folder with --school.\n');
  });
});

/** The whole document; what was not sent is taken from `kept`. */
function together(page: DeskPage, kept: ReadonlyMap<string, string | undefined> = new Map()): string {
  const part = (each: Part): string =>
    'key' in each
      ? (each.html ?? kept.get(each.key)!)
      : each.open + each.parts.map(part).join('') + each.close;
  const css = page.styles.map((style) => style.css ?? kept.get(style.key)!).join('');
  return page.start + css + page.middle + part(page.body) + page.end;
}

function keysOf(page: DeskPage): Map<string, string | undefined> {
  const part = (each: Part): (readonly [string, string | undefined])[] =>
    'key' in each ? [[each.key, each.html]] : each.parts.flatMap(part);
  return new Map([...page.styles.map(({ key, css }) => [key, css] as const), ...part(page.body)]);
}

async function listenTo(heard: FileEvent[]) {
  return new Promise<{ destroy: () => void }>((resolve) => {
    const sent = httpRequest(
      { host: '127.0.0.1', port: desk.port, path: '/events', headers: own(), agent: false },
      (response) => {
        expect(response.headers['content-type']).toContain('text/event-stream');
        response.on('error', () => undefined);
        response.on('data', (bytes: Buffer) => {
          for (const [, data] of bytes.toString().matchAll(/^event: file\ndata: (.*)$/gm)) {
            const event: FileEvent = JSON.parse(data!);
            // About the folder that was moved away and back.
            if (!event.path.startsWith('faults/')) heard.push(event);
          }
        });
        resolve(sent);
      },
    );
    sent.on('error', () => undefined);
    sent.end();
  });
}

/** A written packet without its study page, which is only for a screen: that is what is printed. */
function asPrinted(html: string): string {
  return html
    .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
    .replace(/<script type="application\/json"[\s\S]*<\/script>(?=<\/body>)/, '');
}
