import { describe, expect, it } from 'vitest';
import { excerptOf } from '../../scripts/told/excerpt.ts';
import { retell } from '../../scripts/told/retell.ts';
import { openShell } from '../../scripts/told/shell.ts';

const AIR = './bin/quadwright ask air --height "300 m"';
const block = (language: string, body: string) => `\`\`\`${language}\n${body}\n\`\`\``;

describe('an excerpt', () => {
  const printed = 'lift\n  hover throttle  29.2 %  to 35 %\n  power in hover  164 W\nend\n';

  it('takes each shown line for the printed one that differs in numbers only', () => {
    const { lines, lost } = excerptOf(['  power in hover     99 W'], printed);
    expect(lines).toEqual(['…', '  power in hover  164 W', '…']);
    expect(lost).toEqual([]);
  });

  it('marks lines left out, and only those', () => {
    expect(excerptOf(['lift', '…', '  hover throttle  1 %  to 2 %', 'end'], printed).lines).toEqual([
      'lift',
      '  hover throttle  29.2 %  to 35 %',
      '…',
      'end',
    ]);
  });

  it('keeps blank lines and the rule of a table', () => {
    const { lines } = excerptOf(['Hz', '…', '12', 'said'], 'Hz\n--\n184\n\nsaid\n');
    expect(lines).toEqual(['Hz', '--', '184', '', 'said']);
  });

  it('takes a line whose words have changed for the nearest one', () => {
    const { lines } = excerptOf(['  hover throttle  30 %  of the stick to 35 %'], printed);
    expect(lines).toContain('  hover throttle  29.2 %  to 35 %');
  });

  it('knows a row by its name, whatever its other cells say now', () => {
    // Once a measure that leans on another input was lost, since most of its words had changed.
    const { lines } = excerptOf(['  power in hover  99 W  the propeller as its maker drew it'], printed);
    expect(lines).toContain('  power in hover  164 W');
  });

  it('tells a line that is no longer printed', () => {
    expect(excerptOf(['minutes flown 4.9 min'], printed).lost).toEqual(['minutes flown 4.9 min']);
  });
});

describe('a page', () => {
  it('shows under a command what it prints today', async () => {
    const stale = `${block('sh', AIR)}\n\nIt says:\n\n${block('text', 'pressure  1000  hPa')}\n`;
    const { page, problems } = await retell(stale, {});
    expect(problems).toEqual([]);
    // 300 m of ISO 2533: 977.73 hPa.
    expect(page).toMatch(/^pressure +978 +hPa$/m);
    expect((await retell(page, {})).page).toBe(page);
  });

  it('tells a command that fails', async () => {
    const { problems } = await retell(block('sh', `${AIR} --wet yes`), {});
    expect(problems).toEqual([expect.stringContaining("unknown option '--wet'")]);
  });

  it('has the figures between its marks told anew, and leaves the rest alone', async () => {
    const page = 'Some <!-- told: a -->1 g<!-- end --> of 2 g.\n\n<!-- told: b --><!-- end -->\n';
    const { page: told, shows } = await retell(page, { a: () => '3 g', b: () => '| x |\n| - |' });
    expect(told).toBe(
      'Some <!-- told: a -->3 g<!-- end --> of 2 g.\n\n<!-- told: b -->\n\n| x |\n| - |\n\n<!-- end -->\n',
    );
    expect(shows).toEqual(['a', 'b']);
  });

  it('tells marks without a figure, and marks that would end the prose they stand in', async () => {
    const { problems } = await retell('A\n<!-- told: a -->1 g<!-- end --> <!-- told: c -->2 g<!-- end -->', {
      a: () => '1 g',
    });
    expect(problems).toEqual([
      expect.stringContaining('the mark of a begins a line'),
      expect.stringContaining('no figure c'),
    ]);
  });
});

describe('the shell of pages', () => {
  it('keeps what lines write for the lines after', async () => {
    const shell = openShell(new Map([['a.yaml', 'mass: 3 g\n']]));
    await shell("sed 's/3 g/4 g/' a.yaml > b.yaml");
    await shell('cp b.yaml c.yaml');
    expect(await shell('sed "s/g/mg/" c.yaml')).toEqual({ code: 0, out: 'mass: 4 mg\n', error: '' });
  });

  it('pipes, and finds files by a star', async () => {
    const shell = openShell();
    const piped = await shell(
      'sed "s/^motors: .*/motors: none-such/" demo/first-freestyle/bonxie.yaml | ./bin/quadwright check -',
    );
    expect(piped?.out).toContain('none-such');
    const checked = await shell('./bin/quadwright check demo/first-freestyle/t*.yaml');
    expect(checked?.out).toContain('turnstone.yaml');
    expect(checked?.out).toContain('tystie.yaml');
    expect(checked?.out).not.toContain('bonxie.yaml');
  });

  it('knows what is not its to run, and refuses what it does not know', async () => {
    expect(await openShell()('npm start # serves')).toBeUndefined();
    await expect(openShell()('curl x')).rejects.toThrow('not curl');
  });
});
