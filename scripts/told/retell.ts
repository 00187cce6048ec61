import { excerptOf } from './excerpt.ts';
import { openShell, type Printed } from './shell.ts';

/** Named figures and tables that pages show between marks. */
export type Figures = Readonly<Record<string, () => string>>;

export interface Retold {
  readonly page: string;
  /** What the page must be changed in by hand. */
  readonly problems: readonly string[];
  /** Names of the figures it shows. */
  readonly shows: readonly string[];
}

/**
 * A page with what is computed in it told anew: what commands print, and figures between marks. CONTRIBUTING.md says
 * how a page is written for it.
 */
export async function retell(
  page: string,
  figures: Figures,
  said: Map<string, Printed> = new Map(),
): Promise<Retold> {
  const outputs = await retellOutputs(page, said);
  const marked = retellFigures(outputs.page, figures);
  return { ...marked, problems: [...outputs.problems, ...marked.problems] };
}

/** Blocks of `sh` are run in order, with the files of blocks that bear a name; a block of `text` shows the last one's output. */
async function retellOutputs(page: string, said: Map<string, Printed>): Promise<Omit<Retold, 'shows'>> {
  const files = new Map<string, string>();
  const shell = openShell(files, said);
  const problems: string[] = [];
  let printed = '';
  const pieces = page.split(/^(```[^\n]*\n[\s\S]*?^```$)/m);
  const told: string[] = [];
  for (const piece of pieces) {
    const [, language = '', name = '', body = ''] = piece.match(/^```(\w*) ?([^\n]*)\n([\s\S]*?)```$/) ?? [];
    if (name !== '') files.set(name, body);
    if (language === 'sh') {
      for (const line of body.replaceAll('\\\n', ' ').split('\n')) {
        const ran = await shell(line.trim());
        if (ran === undefined) continue;
        if (ran.code > 1) problems.push(`${line} ends with ${ran.code}: ${ran.error}`);
        printed = ran.out;
      }
    }
    if (language !== 'text') {
      told.push(piece);
      continue;
    }
    const { lines, lost } = excerptOf(body.replace(/\n$/, '').split('\n'), printed);
    problems.push(...lost.map((line) => `no line is printed that is like: ${line}`));
    told.push(`\`\`\`text\n${lines.join('\n')}\n\`\`\``);
  }
  return { page: told.join(''), problems };
}

function retellFigures(page: string, figures: Figures): Retold {
  const problems: string[] = [];
  const shows: string[] = [];
  const told = page.replace(
    /<!-- told: (.+?) -->[\s\S]*?<!-- end -->/g,
    (all, name: string, offset: number) => {
      const figure = figures[name];
      if (figure === undefined) {
        problems.push(`there is no figure ${name} in scripts/told/figures.ts`);
        return all;
      }
      shows.push(name);
      const text = figure();
      const table = text.includes('\n');
      // A line that begins with a comment is no longer prose to Markdown.
      if (!table && /(^|\n) *$/.test(page.slice(0, offset))) {
        problems.push(`the mark of ${name} begins a line: put it further in`);
      }
      return `<!-- told: ${name} -->${table ? `\n\n${text}\n\n` : text}<!-- end -->`;
    },
  );
  return { page: told, problems, shows };
}
