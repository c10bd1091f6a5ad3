import { availableParallelism } from 'node:os';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { InputError, LANGUAGES } from '../base/index.js';
import type { Streams } from './streams.js';
import { TOOL } from './tool.js';

const MOST_JOBS = 64;

/**
 * Reads the command line and hands the work to the command it names. Each command's own code is loaded only when asked
 * for, so that help and version come at once.
 *
 * @param words the command line without program and script
 * @param streams where results and messages go
 * @returns the exit status of the command
 * @throws InputError `bad-option` when the words cannot be understood
 */
export async function readArguments(words: readonly string[], streams: Streams): Promise<number> {
  let status = 0;
  const program = describe(streams, (code) => {
    status = code;
  });
  try {
    await program.parseAsync(words, { from: 'user' });
    return status;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (error.exitCode === 0) return 0;
    if (error.code === 'commander.help') return 2;
    throw new InputError('bad-words', { said: error.message.replace(/^error: /, '') });
  }
}

function describe(streams: Streams, end: (code: number) => void): Command {
  const program = new Command('takesheet')
    .description(
      'Listens to recorded takes of an étude against its part and writes each player a page to practise from.',
    )
    .version(TOOL.version, '--version', 'print the version')
    .helpOption('--help', 'print this help')
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => streams.stdout.write(text),
      writeErr: (text) => streams.stderr.write(text),
      outputError: () => {},
    });
  addStudy(program, streams, end);
  addReview(program, streams, end);
  program.hook('preSubcommand', async (_program, command) => {
    if (command.name() === 'review') command.addHelpText('after', (await import('./review-help.js')).reviewHelp());
  });
  addSection(program, streams, end);
  addHandout(program, streams, end);
  addStanding(program, streams, end);
  addProgress(program, streams, end);
  addDemo(program, streams, end);
  addSchema(program, streams);
  return program;
}

function addStudy(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('study')
    .description('write a sheet to study an étude with, before anyone plays it')
    .argument('<étude>', 'the part, as MusicXML (.musicxml, .xml or .mxl)')
    .option('--out <place>', 'a folder, or a file; without it beside the étude')
    .option('--brief <file>', 'the teacher’s brief (YAML); a starter is written there when it is missing')
    .addOption(new Option('--format <format>', 'pages, or data').choices(['pdf', 'json']).default('pdf'))
    .addOption(paperOption())
    .addOption(languageOption('of the sheet'))
    .action(async (scorePath, { brief, ...options }) => {
      const { study } = await import('./study.js');
      end(await study({ tool: TOOL, scorePath, briefPath: brief, ...options }, streams));
    });
}

function addReview(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('review')
    .description('listen to takes and write a report for each, and a section sheet for all of them')
    .argument('<takes...>', 'recordings, or folders that hold some (searched to any depth)')
    .option('--score <file>', 'the part, as MusicXML (.musicxml, .xml or .mxl)')
    .option('--scores <folder>', 'several parts; each take is held against the one that was played')
    .requiredOption('--out <folder>', 'where to write; made when it is missing')
    .option('--brief <file>', 'the teacher’s brief for the étude (YAML)')
    .option(
      '--roster <file>',
      'who played what and when: CSV with the heads file,player,date,instrument,part; others are kept',
    )
    .addOption(
      new Option(
        '--dates <order>',
        'how the roster writes days: day, month, year in which order (without it: learnt from the column)',
      ).choices(['dmy', 'mdy', 'ymd']),
    )
    .option('--names <pattern>', 'how files are named, e.g. {date}_{player}; also {instrument}, {part}, {skip}')
    .option('--blind', 'numbers instead of names everywhere; the key to them is blind-key.csv', false)
    .option('--again', 'listen again to takes whose results are there already', false)
    .addOption(shardOption())
    .addOption(new Option('--json-only', 'write no PDF, only JSON and CSV').default(false).conflicts('listen'))
    .option('--listen', 'write the listening room too: all takes, heard bar by bar in a browser', false)
    .addOption(jobsOption())
    .addOption(boundOption('--time-limit <seconds>', 'how long to work on one take (without it: by its length)'))
    .addOption(boundOption('--memory-limit <MB>', 'memory for one take (without it: by its length)'))
    .addOption(paperOption())
    .addOption(languageOption('of the players’ pages and of what the results tell'))
    .action(async (takes, options) => {
      const { review } = await import('./review.js');
      const { score, scores, out, brief, roster, names, timeLimit, memoryLimit, ...rest } = options;
      const files = { scorePath: score, scoresFolder: scores, briefPath: brief, rosterPath: roster, outFolder: out };
      const limits = { seconds: timeLimit, megabytes: memoryLimit };
      end(await review({ tool: TOOL, inputs: takes, namePattern: names, limits, ...files, ...rest }, streams));
    });
}

function addSection(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('section')
    .description('make the section’s files anew from the takes’ results in a folder')
    .argument('<folder>', 'what review has written, or several of these copied into one')
    .option('--json-only', 'write no PDF, only JSON and CSV', false)
    .addOption(paperOption())
    .addOption(sheetLanguageOption())
    .action(async (folder, { jsonOnly, paper, language }) => {
      const { section } = await import('./section.js');
      end(await section({ tool: TOOL, outFolder: folder, jsonOnly, paper, language }, streams));
    });
}

function addHandout(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('handout')
    .description('make what is handed out: a folder a player, all pages to print, a page over everything, a mail table')
    .argument('<folder>', 'what review has written')
    .option('--out <folder>', 'where to write; without it the folder handout in the one given')
    .option('--all', 'every take, not only the latest of each player', false)
    .addOption(sheetLanguageOption())
    .action(async (folder, { out, all, language }) => {
      const { handout } = await import('./handout.js');
      end(await handout({ folder, out, all, language }, streams));
    });
}

function addStanding(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('standing')
    .description('points and places of the takes in a folder, beside the marks of a panel, and a blank sheet for it')
    .argument('<folder>', 'what review has written with a brief')
    .addOption(boundOption('--chairs <number>', 'how many are to be seated in each part'))
    .option('--panel <file>', 'the panel’s own marks: CSV with the heads take,judge,criterion,points')
    .addOption(paperOption())
    .addOption(sheetLanguageOption())
    .action(async (folder, { chairs, panel, paper, language }) => {
      const { standing } = await import('./standing.js');
      const request = { tool: TOOL, outFolder: folder, chairs: chairs ?? null, marksPath: panel, paper, language };
      end(await standing(request, streams));
    });
}

function addProgress(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('progress')
    .description('compare the results of several weeks, player by player and for the section')
    .argument('<results...>', 'folders that review has written, or JSON files in them (searched to any depth)')
    .option('--out <place>', 'a folder, or a file; without it in the first folder given')
    .addOption(new Option('--format <format>', 'pages, or data').choices(['pdf', 'json']).default('pdf'))
    .addOption(paperOption())
    .addOption(sheetLanguageOption())
    .action(async (inputs, { out, format, paper, language }) => {
      const { progress } = await import('./progress.js');
      end(await progress({ tool: TOOL, inputs, out, format, paper, language }, streams));
    });
}

function addDemo(program: Command, streams: Streams, end: (code: number) => void): void {
  program
    .command('demo')
    .description('write an invented étude and an invented section playing it, and review them')
    .option('--out <folder>', 'where to write; made when it is missing', 'reports/demo')
    .addOption(jobsOption())
    .addOption(paperOption())
    .action(async ({ out, jobs, paper }) => {
      const { demo } = await import('./demo.js');
      end(await demo({ tool: TOOL, folder: out, jobs, paper }, streams));
    });
}

function addSchema(program: Command, streams: Streams): void {
  program
    .command('schema')
    .description('print the JSON Schema of a take’s result document')
    .addOption(new Option('--section', 'that of section.json instead').default(false).conflicts('progress'))
    .option('--progress', 'that of progress.json instead', false)
    .action(async ({ section, progress }) => {
      const { sectionResultJsonSchema, takeResultJsonSchema } = await import('../result/index.js');
      const { progressResultJsonSchema } = await import('../weeks/index.js');
      const ofAll = progress ? progressResultJsonSchema : sectionResultJsonSchema;
      const schema = section || progress ? ofAll() : takeResultJsonSchema();
      streams.stdout.write(`${JSON.stringify(schema, null, 2)}\n`);
    });
}

function jobsOption(): Option {
  return new Option('--jobs <number>', 'how many takes to work on at the same time')
    .default(Math.min(availableParallelism(), MOST_JOBS), 'as many as there are processors')
    .argParser((text) => {
      const jobs = /^\d+$/.test(text) ? Number(text) : 0;
      if (jobs >= 1 && jobs <= MOST_JOBS) return jobs;
      throw new InvalidArgumentError(`It must be a whole number from 1 to ${MOST_JOBS}.`);
    });
}

function shardOption(): Option {
  return new Option('--shard <share/of>', 'review one share of the takes, e.g. 3/8').argParser((text) => {
    const [, share, of] = (/^(\d{1,4})\/(\d{1,4})$/.exec(text) ?? []).map(Number);
    if (share !== undefined && of !== undefined && share >= 1 && share <= of) return { share, of };
    throw new InvalidArgumentError('It must be two whole numbers such as 3/8, the first no larger than the second.');
  });
}

function boundOption(flags: string, description: string): Option {
  return new Option(flags, description).argParser((text) => {
    if (/^[1-9]\d{0,5}$/.test(text)) return Number(text);
    throw new InvalidArgumentError('It must be a whole number from 1 to 999999.');
  });
}

function paperOption(): Option {
  return new Option('--paper <size>', 'size of the pages').choices(['a4', 'letter']).default('a4');
}

function languageOption(description: string): Option {
  return new Option('--language <tag>', description).choices(LANGUAGES).default('en' as const);
}

function sheetLanguageOption(): Option {
  return new Option(
    '--language <tag>',
    'of the sheet (without it: that of the results, English when they differ)',
  ).choices(LANGUAGES);
}
