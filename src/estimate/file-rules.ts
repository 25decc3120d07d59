import { limits, type Rule } from '../language/index.js';
import { clip, formatVersion } from '../vocabulary/index.js';

type Path = { readonly path: string };
const lost = 'Rates, parts and jobs from that file are missing until it can be read.';

export const formatMissing: Rule<undefined> = {
  code: 'format-missing', family: 'shape', severity: 'warning', title: 'The first line is missing',
  message: () => ({ what: 'The file does not say which form of the language it is written in.', why: 'A later version could read it differently.', instead: `Start the file with: steelyard ${formatVersion}` }),
  fix: (_, at) => ({ title: 'Add the first line', at: { ...at, end: at.start }, text: `steelyard ${formatVersion}\n` }),
  example: '«note» "All figures are invented"\n',
};

export const formatNotFirst: Rule<undefined> = {
  code: 'format-not-first', family: 'shape', severity: 'warning', title: 'The format line is not the first',
  message: () => ({ what: 'This line belongs at the top of the file.', why: 'It says how everything below is to be read.', instead: 'Move it to the first line.' }),
  example: 'note "All figures are invented"\n«steelyard 1»\n',
};

export const formatNewer: Rule<{ readonly version: string }> = {
  code: 'format-newer', family: 'shape', severity: 'error', title: 'A newer form of the language',
  message: ({ version }) => ({ what: `This file is written in form ${version}; this version of Steelyard reads form ${formatVersion}.`, why: 'Guessing at a newer form could price it wrongly, so nothing in this file is counted.', instead: `Use a newer Steelyard, or write the file in form ${formatVersion}.` }),
  example: 'steelyard «2»\n',
};

export const tooManyProblems: Rule<undefined> = {
  code: 'too-many-problems', family: 'shape', severity: 'error', title: 'Too many problems to go on',
  message: () => ({ what: `There are more than ${limits.problems} problems above, so the file is not read on from here.`, why: 'Nothing below is counted.', instead: 'Mend what is above, or see whether this is an estimate at all.' }),
  example: `steelyard 1\n${'labor "Work" 1 h\n'.repeat(limits.problems + 1)}«note "Never reached"»\n`,
};

export const useOutside: Rule<Path> = {
  code: 'use-outside', family: 'names', severity: 'error', title: 'A shared file outside the workspace',
  message: ({ path }) => ({ what: `“${clip(path)}” leads out of the folder that is worked in, or is not a relative path.`, why: 'An estimate may only read files that travel with it; nothing outside is opened.', instead: `Copy it beside this file and write use "${clip(nameIn(path))}". A file further up is read only below the folder that is open in the editor; in the terminal, below that of the git repository.` }),
  example: 'steelyard 1\nuse «"../../../shop.yard"»\n',
};

/** The file's own name in a path, an address or a place on a drive. */
function nameIn(path: string): string {
  const name = path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  return name === '' || name === '..' ? 'shop.yard' : name;
}

export const useMissing: Rule<Path> = {
  code: 'use-missing', family: 'names', severity: 'error', title: 'A shared file that can’t be read',
  message: ({ path }) => ({ what: `There is no file “${clip(path)}” that can be read.`, why: lost, instead: 'Correct the path, which starts at this file’s folder, or create the file. If it is there, see that you may read it and that it is text.' }),
  example: 'steelyard 1\nuse «"no-such-file.yard"»\n',
};

export const useCircular: Rule<Path> = {
  code: 'use-circular', family: 'names', severity: 'error', title: 'Files that use each other',
  message: ({ path }) => ({ what: `“${clip(path)}” uses this file, directly or through another.`, why: 'Files that use each other in a circle have no beginning; this line is left out.', instead: 'Remove this line, or move what both need into a third file.' }),
  example: 'steelyard 1\nuse «"this.yard"»\n',
};

export const useTooMany: Rule<Path> = {
  code: 'use-too-many', family: 'names', severity: 'error', title: 'Too many shared files',
  message: ({ path }) => ({ what: `“${clip(path)}” is not read: shared files may use each other 8 deep, 24 files in all.`, why: lost, instead: 'Put what these files share into fewer files.' }),
  example: `steelyard 1\n${Array.from({ length: 24 }, (_, i) => (i === 23 ? `use «"shared-24.yard"»` : `use "shared-${i + 1}.yard"`)).join('\n')}\n`,
};

export const pictureOutside: Rule<{ readonly path: string }> = {
  code: 'picture-outside', family: 'names', severity: 'warning', title: 'A picture that can’t be shown',
  message: ({ path }) => ({ what: `“${clip(path)}” is not a picture file of this workspace.`, why: 'Only PNG, JPEG and WebP files below the folder of the workspace are shown and put on a quote.', instead: 'Copy the picture beside the estimate and write its path: picture "pictures/cylinder-4.jpg"' }),
  example: 'steelyard 1\nfinding burnt "Exhaust valve burnt"\n  picture «"../../elsewhere/valve.jpg"»\n',
};
