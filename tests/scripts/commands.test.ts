/** The commands as a person runs them: what they print and the exit code they end in. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run, useFolder } from '../support/runScript.ts';

const { folder, file } = useFolder('commands');
const shipped = readFileSync('data/arms.csv', 'utf8');

describe('every script that a person runs', () => {
  it.each([
    'check',
    'fit',
    'compare',
    'plan',
    'agreement',
    'references',
    'demo-evidence',
    'dictionary',
    'licences',
    'budget',
    'bench',
    'calibrate',
    'hostile',
  ])('%s says with --help how it is called, does nothing else and ends in 0', (script) => {
    const { status, stdout, stderr } = run(script, '--help');
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^usage: npm run [a-z]+.*\n(?: {7}npm run [a-z]+.*\n)?\n[A-Z][\s\S]+\.\n$/u);
  });

  it('does not run with an option that it does not have or a file that it does not read', () => {
    expect(run('dictionary', '--colour')).toMatchObject({
      status: 2,
      stdout: '',
      stderr: "Unknown option '--colour'\nusage: npm run dictionary\n",
    });
    expect(run('licences', 'a.csv')).toMatchObject({
      status: 2,
      stdout: '',
      stderr: 'expected no file, received 1: a.csv\nusage: npm run licences\n',
    });
  });
});

describe('check', () => {
  it('of the shipped table ends in 0 with a summary', () => {
    const { status, stdout } = run('check', 'data/arms.csv');
    expect(status).toBe(0);
    expect(stdout).toMatch(/rows of \d+ arms in 48 studies .*no problem/u);
  });

  it('of a wrong table ends in 1 with every problem on a line of its own', () => {
    const wrong = file('wrong.csv', shipped.replace(',30,', ',130,').replace('within-person', 'sideways'));
    const { status, stderr } = run('check', wrong);
    expect(status).toBe(1);
    expect(stderr).toMatch(
      /line \d+, `load_pct_1rm`: expected a number above 0 and up to 100, or a range such as 8-12, received “130”/u,
    );
    expect(stderr).toMatch(/`design`: expected one of parallel/u);
  });

  it.each([
    [
      'a file that is not there',
      ['no-such-file.csv'],
      /cannot read the table no-such-file\.csv: expected a file, found nothing at \/.*no-such-file\.csv/u,
    ],
    ['a folder', ['data'], /cannot read the table data: expected a file, found a folder at \/.*data/u],
    ['two files', ['a.csv', 'b.csv'], /expected one file, received 2: a\.csv, b\.csv\nusage/u],
  ])('of %s ends in 2 with what was wrong', (_what, parameters, message) => {
    const { status, stderr } = run('check', ...parameters);
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
  });
});

describe('check of the two tables', () => {
  const shippedStudies = readFileSync('data/studies.csv', 'utf8');
  const withoutWren = shippedStudies.replace(/^Wren 2007.*\n/mu, '');
  /** A folder whose data/ holds the shipped arms and these studies. */
  const project = (name: string, studies: string) => {
    const root = join(folder, name);
    mkdirSync(join(root, 'data'), { recursive: true });
    writeFileSync(join(root, 'data/arms.csv'), shipped);
    writeFileSync(join(root, 'data/studies.csv'), studies);
    return root;
  };
  const runIn = (cwd: string, ...parameters: string[]) =>
    spawnSync(process.execPath, [resolve('scripts/check.ts'), ...parameters], { encoding: 'utf8', cwd });

  it('that are shipped ends in 0 and says that they were compared', () => {
    const { status, stdout } = run('check');
    expect(status).toBe(0);
    expect(stdout).toMatch(/studies compared with data\/studies\.csv; no problem, 0 warning/u);
  });

  it('without a file has a study without its line as a problem', () => {
    const { status, stderr } = runIn(project('missing', withoutWren));
    expect(status).toBe(1);
    expect(stderr).toMatch(
      /arms\.csv: line \d+, `study`: expected a study that has a line in studies\.csv, received “Wren 2007”/u,
    );
    expect(stderr).toMatch(/1 problem\(s\) in data\/arms\.csv and data\/studies\.csv/u);
  });

  it('of the table of studies alone says how it is checked', () => {
    const { status, stderr } = runIn(project('studies', shippedStudies), 'data/studies.csv');
    expect(status).toBe(1);
    expect(stderr).toMatch(/for a table of studies, check the arms beside it: data\/arms\.csv/u);
  });

  it('with a file has the same as a warning', () => {
    const { status, stdout } = runIn(project('given', withoutWren), 'data/arms.csv');
    expect(status).toBe(0);
    expect(stdout).toMatch(/warning: arms\.csv: line \d+, `study`: .*received “Wren 2007”/u);
    expect(stdout).toMatch(/no problem, 1 warning/u);
  });

  it('has a line without arms as a warning either way', () => {
    const root = project('extra', `${shippedStudies}Plover 2030,Plover A,2030,Not coded yet,,,,,\n`);
    for (const parameters of [[], ['data/arms.csv']]) {
      const { status, stdout } = runIn(root, ...parameters);
      expect(status).toBe(0);
      expect(stdout).toMatch(/warning: studies\.csv: line 50, `study`: expected a study that has arms in arms\.csv/u);
    }
  });

  it('has the problems of the studies as problems, warns of a DOI, and does not compare what it could not read', () => {
    const wrong = shippedStudies.replace(',1996,', ',soon,').replace(/(Wren 2007.*1–10,),/u, '$1x,');
    const { status, stdout, stderr } = runIn(project('wrong', wrong));
    expect(status).toBe(1);
    expect(stdout).toMatch(/warning: studies\.csv: line 3, `doi`/u);
    expect(stderr).toMatch(/studies\.csv: line 2, `year`: .*\n1 problem\(s\).*not compared/u);
    expect(stderr).not.toMatch(/a study that has a line/u);
  });

  it('without a file where there is no table of studies ends in 2; a table elsewhere is checked alone', () => {
    const root = project('alone', '');
    rmSync(join(root, 'data/studies.csv'));
    expect(runIn(root)).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/cannot read the table of studies/u),
    });
    const { status, stdout } = runIn(root, 'data/arms.csv');
    expect(status).toBe(0);
    expect(stdout).toMatch(/no data\/studies\.csv to compare its studies with; no problem/u);
  });
});

describe('plan', () => {
  const arms = ['--arm', 'light:0:10', '--arm', 'light:2:10'];
  it('of the shipped table says the interval today and the expected one, and ends in 0', () => {
    const { status, stdout } = run('plan', 'data/arms.csv', ...arms, '--width', '0.7');
    expect(status).toBe(0);
    expect(stdout).toMatch(
      /LIGHT: 2 planned arm\(s\)\n {2}target today: 0\.36, interval .*\n {2}expected after: 0\.3\d, interval/u,
    );
    expect(stdout).toMatch(/light: no wider than 0\.7 from \d+ people an arm on/u);
  });

  it('gives the same as JSON, and the best places', () => {
    const { stdout } = run('plan', 'data/arms.csv', ...arms, '--json');
    expect(JSON.parse(stdout)).toMatchObject({
      people: 20,
      bands: [
        { band: 'light', arms: 2 },
        { band: 'heavy', arms: 0 },
      ],
    });
    const best = run('plan', 'data/arms.csv', '--best', '2', '--people', '40', '--band', 'heavy');
    expect(best.stdout).toMatch(/the best of 66 ways/u);
  });

  it.each([
    [['--arm', 'light:0'], 2, '--arm: expected LOAD:RESERVE:PEOPLE such as light:0:10 or 75:2:15, received “light:0”'],
    [['--arm', 'light:0:x'], 2, 'received “light:0:x”'],
    [['--arm', 'light:0:1'], 1, 'plan: arm 1: expected a whole number of people from 3 to 100000, or 0, received 1'],
    [[...arms, '--design', 'crossover'], 2, '--design: expected parallel or within-person, received “crossover”'],
    [['--best', '2'], 2, 'expected the people of the study (--people 40) beside --best'],
    [[], 2, 'expected an arm (--arm light:0:10) or --best, received neither'],
    [[...arms, '--best', '2', '--people', '40'], 2, 'expected an arm (--arm light:0:10) or --best, received both'],
    [[...arms, '--people', '40'], 2, 'expected --people beside --best, received it beside arms, which say their own'],
    [[...arms, '--band', 'heavy'], 2, 'expected --band beside --best, received it beside arms'],
    [['--best', '2', '--people', '40', '--width', '1'], 2, 'expected --width beside arms (--arm light:0:10), received'],
    [['--best', '2', '--people', '40.5'], 2, '--people: expected a whole number above 0, received “40.5”'],
    [['--best', '2', '--people', '-3'], 2, "use '--people=-XYZ'"],
    [['--best', '2', '--people', '3'], 1, 'plan: 3 people are too few for 2 arms of 3 at least'],
    [[...arms, '--cv', '0.1', '--cv', '0.2'], 2, 'expected --cv once, received 0.1 and 0.2\nusage'],
  ])('of %o ends in %i and says what was expected', (options, status, message) => {
    const result = run('plan', 'data/arms.csv', ...options);
    expect(result.status).toBe(status);
    expect(result.stderr).toContain(message);
  });
});

describe('fit', () => {
  it('prints JSON with the agreed names', () => {
    const { status, stdout } = run('fit', 'data/arms.csv', '--json');
    expect(status).toBe(0);
    const analysis = JSON.parse(stdout);
    expect(Object.keys(analysis)).toEqual(expect.arrayContaining(['settings', 'rows', 'bands', 'difference']));
    expect(Object.keys(analysis.bands)).toEqual(['light', 'heavy']);
    const names = ['studies', 'rows', 'curve', 'coefficients', 'tau2', 'omega2', 'logLikelihood', 'aicc', 'target'];
    expect(Object.keys(analysis.bands.light)).toEqual(expect.arrayContaining(names));
    expect(Object.keys(analysis.bands.light.coefficients[0]).sort()).toEqual([
      'ciHigh',
      'ciLow',
      'df',
      'estimate',
      'modelStandardError',
      'p',
      'standardError',
      'term',
    ]);
    expect(Object.keys(analysis.bands.light.target).sort()).toEqual([
      'high',
      'keptShare',
      'low',
      'point',
      'reachedEdge',
      'reason',
      'set',
      'shown',
      'whole',
    ]);
    expect(analysis.rows.excluded[0]).toEqual({ line: expect.any(Number), reason: expect.any(String) });
  });

  it('prints a summary for people, which says that the data are invented', () => {
    const { status, stdout } = run('fit', 'data/arms.csv');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^arms\.csv, invented for demonstration: growth against reserve/u);
    expect(stdout).toMatch(/LIGHT: \d+ rows of \d+ studies/u);
    expect(stdout).toMatch(/target: \d+\.\d+ in reserve keep 90\u00a0% of the growth at 0/u);
  });

  it('adds with --full what stands beside the curve and whether it survives, in words too', () => {
    const { status, stdout } = run('fit', 'data/arms.csv', '--full');
    expect(status).toBe(0);
    expect(stdout).toMatch(/LIGHT: \d+ rows[\s\S]*more repetitions in reserve change strength by/u);
    expect(stdout).toMatch(/CHECKS, HEAVY\n(?:.*\n)*Inside studies the straight line’s slope is/u);
  });

  it('takes the outcome from the call and the rest from the settings file, files with byte-order marks and semicolons', () => {
    const settings = file('settings.json', '\ufeff{"keptShare": 0.8, "curve": "log", "assumedCorrelation": 0.7}');
    const { stdout } = run(
      'fit',
      file('semicolons.csv', `\ufeff${shipped.replaceAll(',', ';')}`),
      '--outcome',
      'strength',
      '--settings',
      settings,
      '--json',
    );
    expect(JSON.parse(stdout).settings).toMatchObject({
      outcome: 'strength',
      keptShare: 0.8,
      curve: 'log',
      assumedCorrelation: { growth: 0.7, strength: 0.7 },
    });
  });

  it.each([
    ['no file', [], /expected one table file, received 0\nusage/u],
    ['an unknown option', ['data/arms.csv', '--colour'], /Unknown option '--colour'\nusage/u],
    ['an unknown outcome', ['data/arms.csv', '--outcome', 'joy'], /^--outcome: expected one of growth, .* “joy”/u],
  ])('with %s ends in 2 with what was wrong', (_what, parameters, message) => {
    const { status, stderr } = run('fit', ...parameters);
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
  });

  it('with a settings file that is not accepted ends in 1 and says where', () => {
    const { status, stdout, stderr } = run('fit', 'data/arms.csv', '--settings', file('bad.json', '{"keptShare": 2}'));
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/bad\.json: `keptShare`: expected number to be <1, received “2”\.\n$/u);
  });

  it('of a wrong table fits nothing, ends in 1 and lists the problems', () => {
    const { status, stdout, stderr } = run('fit', file('wrong.csv', shipped.replace(',30,', ',130,')), '--json');
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/wrong\.csv: line \d+, `load_pct_1rm`[\s\S]*nothing was fitted/u);
  });
});

describe('compare', () => {
  const [header = '', ...lines] = shipped.trim().split('\n');
  const study = lines.at(-1)?.split(',')[0] ?? '';
  const without = file(
    'without.csv',
    [header, ...lines.filter((line) => !line.startsWith(`${study},`))]
      .join('\n')
      .replace(',34.14,5.81,36.97,', ',34.14,5.81,38.9,'),
  );

  it('tells in words what changed, the answers and who moved them', () => {
    const { status, stdout } = run('compare', 'data/arms.csv', without);
    expect(status).toBe(0);
    expect(stdout).toContain(`Studies removed 1: ${study}`);
    expect(stdout).toMatch(/Osprey 2015: 1 row\(s\) changed[\s\S]*followup_mean: “36\.97” → “38\.9”/u);
    expect(stdout).toMatch(/HEAVY\n.*rows of studies.*72 of 17 → \d+ of \d+/u);
    expect(stdout).toMatch(/mean slope +-0\.00178 \(-0\.00375 to 0\.000193\) → -0\.\d+ \(.*\); moved by [+−]/u);
    expect(stdout).toMatch(/target at 90\u00a0% +3\.23 \(1\.60 to 4\.17\) → \d\.\d+ \(.*\); target moved by [+−]\d/u);
    expect(stdout).toMatch(/Osprey 2015 \(changed, 4 rows\): slope moved by [+−].*, target moved by [+−]\d/u);
  });

  it('of a table with itself says that nothing changed', () => {
    const { status, stdout } = run('compare', 'data/arms.csv', 'data/arms.csv');
    expect(status).toBe(0);
    expect(stdout).toMatch(/Nothing changed/u);
    expect(stdout).toMatch(/moved by 0\n/u);
  });

  it('prints JSON with the settings of the file', () => {
    const settings = file('all.json', '{"split": null, "keptShare": 0.8}');
    const { status, stdout } = run('compare', 'data/arms.csv', without, '--json', '--settings', settings);
    expect(status).toBe(0);
    const comparison = JSON.parse(stdout);
    expect(comparison).toMatchObject({ same: false, settings: { split: null, keptShare: 0.8 } });
    expect(comparison.studies.removed).toEqual([study]);
    expect(comparison.bands.map(({ band }: { band: string }) => band)).toEqual(['all']);
    expect(comparison.bands[0].before.target.keptShare).toBe(0.8);
  });

  it.each([
    ['one file', ['data/arms.csv'], 2, /two table files, the old and the new, received 1/u],
    ['three files', ['a', 'b', 'c'], 2, /received 3/u],
    ['an unknown option', ['a', 'b', '--colour'], 2, /usage/u],
    [
      'a file that is not there',
      ['data/arms.csv', 'none.csv'],
      2,
      /cannot read the new table none\.csv: expected a file/u,
    ],
    ['a settings file that is not there', ['a', 'b', '--settings', 'no.json'], 2, /cannot read the settings file/u],
    [
      'a table of other columns',
      ['data/arms.csv', 'data/published.csv'],
      1,
      /in data\/published\.csv; nothing was compared/u,
    ],
    ['two wrong tables', ['data/studies.csv', 'data/published.csv'], 1, /in data\/studies[\s\S]*in data\/published/u],
  ] as const)('with %s ends in the right code and says why', (_what, parameters, code, message) => {
    const { status, stdout, stderr } = run('compare', ...parameters);
    expect([status, stdout]).toEqual([code, '']);
    expect(stderr).toMatch(message);
  });
});
