import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, extname, isAbsolute, join, relative, sep } from 'node:path';
import { imageSize } from 'image-size';
import type { FindPicture, FoundPicture } from '../../lesson/pictures.ts';
import { didYouMean } from '../../messages/nearest-name.ts';

/** The kinds of picture that a page may hold, by the ending of their files; what is in the file must agree with it. */
const kinds: Readonly<Record<string, string>> = {
  '.png': 'png',
  '.jpg': 'jpg',
  '.jpeg': 'jpg',
  '.webp': 'webp',
  '.gif': 'gif',
};
const mimes: Readonly<Record<string, string>> = {
  png: 'image/png',
  jpg: 'image/jpeg',
  webp: 'image/webp',
  gif: 'image/gif',
};

const mebibyte = 2 ** 20;
/** Bytes: of one picture, and of all those in a lesson, which are a third larger in the page. */
const most = { one: 4 * mebibyte, all: 16 * mebibyte };
/** Pixels along a side: a small file may unfold to more than a browser can hold. */
const widest = 8_000;

/**
 * Finds the pictures of a lesson in its own folder and below, and gives them as `data:` addresses. A picture may not
 * be outside by way of a symbolic link either; an SVG, which may hold a program, is refused.
 *
 * @param folder the folder of the lesson's file
 */
export function picturesIn(folder: string): FindPicture {
  let taken = 0;
  return (path) => {
    const kind = kinds[extname(path).toLowerCase()];
    if (kind === undefined) {
      const isSvg = /\.svgz?$/i.test(path);
      return wrong(
        isSvg
          ? `A picture cannot be SVG (\`${path}\`), which may hold a program: save it as PNG`
          : `A picture is a PNG, JPEG, WebP or GIF file, and \`${path}\` does not end so`,
      );
    }
    let file: string;
    let size: number;
    try {
      file = realpathSync(join(folder, path));
      const way = relative(realpathSync(folder), file);
      if (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way)) throw new OutsideError();
      const found = statSync(file);
      if (!found.isFile()) return wrong(`\`${path}\` is no file: write the name of a picture`);
      size = found.size;
    } catch (error) {
      if (error instanceof OutsideError)
        return wrong(`\`${path}\` leads out of the lesson's folder: put the file itself there`);
      return wrong(
        `There is no picture \`${path}\` in the lesson's folder${didYouMean(path, picturesBeside(folder, path))}`,
      );
    }
    if (size > most.one)
      return wrong(`\`${path}\` is larger than ${most.one / mebibyte} MiB: make it smaller`);
    taken += size;
    if (taken > most.all) {
      return wrong(
        `With \`${path}\` the pictures of this lesson are larger than ${most.all / mebibyte} MiB: make them smaller`,
      );
    }
    return read(file, path, kind);
  };
}

class OutsideError extends Error {}

function wrong(reason: string): { wrong: string } {
  return { wrong: reason };
}

function read(file: string, path: string, kind: string): FoundPicture | { wrong: string } {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch {
    return wrong(`\`${path}\` cannot be read: look at the permissions of the file`);
  }
  const isOther = `\`${path}\` is no ${kind.toUpperCase()} picture, whatever its name says: save it anew`;
  try {
    const { type, width, height } = imageSize(bytes);
    if (type !== kind || !(width > 0 && height > 0)) return wrong(isOther);
    if (Math.max(width, height) > widest)
      return wrong(
        `\`${path}\` is ${width} × ${height} pixels, and ${widest} along a side is the most: make it smaller`,
      );
    return { path, src: `data:${mimes[kind]};base64,${bytes.toString('base64')}`, width, height };
  } catch {
    // Not a picture that can be measured, or cut off.
    return wrong(isOther);
  }
}

/** The pictures in the folder that was meant, as an author would write them. */
function picturesBeside(folder: string, path: string): string[] {
  const way = dirname(path);
  try {
    return readdirSync(join(folder, way))
      .filter((name) => extname(name).toLowerCase() in kinds)
      .map((name) => (way === '.' ? basename(name) : `${way}/${name}`));
  } catch {
    return [];
  }
}
