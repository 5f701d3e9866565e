/** Ways of writing a block of three weeks, the second without training. All invented. */
const tabs = (text: string) => text.replaceAll('»', '\t');

export const BLOCKS: Readonly<Record<string, string>> = {
  'weeks and days as headings': `Week 1
Monday
Back squat 4x6 80% 2 RIR
Thursday
RDL 3x8 70% 3 RIR
Week 3
Monday
Back squat 4x6 82.5% 2 RIR
Thursday
RDL 3x8 72.5% 3 RIR`,
  'short weeks before days': `W1 Mon back squat 4x6 80% 2 RIR
W1 Thu RDL 3x8 70% 3 RIR
W3 Mon back squat 4x6 82,5% 2 RIR
W3 Thu RDL 3x8 72,5% 3 RIR`,
  'weeks and days numbered together': `W1D1 back squat 4x6 80% 2 RIR
W1D4 RDL 3x8 70% 3 RIR
W3D1 back squat 4x6 82.5% 2 RIR
W3D4 RDL 3x8 72.5% 3 RIR`,
  'the week named once, before its first line': `Wk 1 Mon: back squat 4x6 80% 2 RIR
Thu: RDL 3x8 70% 3 RIR
Wk 3 Mon: back squat 4x6 82.5% 2 RIR
Thu: RDL 3x8 72.5% 3 RIR`,
  'weeks in words': `WEEK ONE
Mon back squat 4x6 80% 2 RIR
Thu RDL 3x8 70% 3 RIR
Week three
Mon back squat 4x6 82.5% 2 RIR
Thu RDL 3x8 72.5% 3 RIR`,
  'weeks counted off': `1st week
Mon back squat 4x6 80% 2 RIR
Thu RDL 3x8 70% 3 RIR
Third week
Mon back squat 4x6 82.5% 2 RIR
Thu RDL 3x8 72.5% 3 RIR`,
  'weeks after days': `Mon, week 1: back squat 4x6 80% 2 RIR
Thu (wk 1): RDL 3x8 70% 3 RIR
Mon week 3 – back squat 4x6 82.5% 2 RIR
Thursday, week 3: RDL 3x8 72.5% 3 RIR`,
  'weeks with what they are for': `Week 1 – build
Mon back squat 4x6 80% 2 RIR
Thu RDL 3x8 70% 3 RIR
Week 3 (heavier)
Mon back squat 4x6 82.5% 2 RIR
Thu RDL 3x8 72.5% 3 RIR`,
  'a week of so many': `Week 1 of 3
Mon back squat 4x6 80% 2 RIR
Thu RDL 3x8 70% 3 RIR
Week 3 of 3
Mon back squat 4x6 82.5% 2 RIR
Thu RDL 3x8 72.5% 3 RIR`,
  'days counted through the block': `Day 1: back squat 4x6 80% 2 RIR
Day 4: RDL 3x8 70% 3 RIR
Day 15: back squat 4x6 82.5% 2 RIR
Day 18: RDL 3x8 72.5% 3 RIR`,
  'a column of weeks': tabs(`Week»Day»Exercise»Sets»Reps»%1RM»RIR
1»Mon»Back squat»4»6»80»2
1»Thu»RDL»3»8»70»3
3»Mon»Back squat»4»6»82.5»2
3»Thu»RDL»3»8»72.5»3`),
  'a column of weeks, each written once': tabs(`Wk»Day»Exercise»Sets»Reps»%1RM»RIR
Week 1»Mon»Back squat»4»6»80»2
»Thu»RDL»3»8»70»3
Week 3»Mon»Back squat»4»6»82,5»2
»Thu»RDL»3»8»72,5»3`),
  'weeks as columns beside days': tabs(`Day»Exercise»Week 1»Week 3
Mon»Back squat»4x6 80% 2 RIR»4x6 82.5% 2 RIR
Thu»RDL»3x8 70% 3 RIR»3x8 72.5% 3 RIR`),
  'weeks as columns under days': tabs(`Monday»»
Exercise»Wk 1»Wk 3
Back squat»4x6 80% 2 RIR»4x6 82.5% 2 RIR
Thursday»»
RDL»3x8 70% 3 RIR»3x8 72.5% 3 RIR`),
  'the site’s own form with a week': `week,day,exercise,sets,repetitions,load,reserve
,Monday,barbell back squat,4,6,80,2
,Thursday,Romanian deadlift,3,8,70,3
3,Monday,barbell back squat,4,6,82.5,2
3,Thursday,Romanian deadlift,3,8,72.5,3`,
  'the site’s own form with days of the block': `day,exercise,sets,repetitions,load,reserve
1,barbell back squat,4,6,80,2
4,Romanian deadlift,3,8,70,3
15,barbell back squat,4,6,82.5,2
18,Romanian deadlift,3,8,72.5,3`,
};

const block = (third: string) => `Week 1
Mon back squat 4x6 80% 2 RIR
Thu RDL 3x8 70% 3 RIR
${third}`;

/** By name: the text, and the fix. */
export const REFUSED_BLOCKS: Readonly<Record<string, readonly [text: string, fix: RegExp]>> = {
  'a range of weeks': [
    'Weeks 1-4\nMon back squat 4x6 80% 2 RIR\nThu RDL 3x8 70% 3 RIR',
    /Write one week, “Week 1”, and copy it/u,
  ],
  'a range of weeks before a day': ['Week 1-4: Mon back squat 4x6 80% 2 RIR', /Write one week, “Week 1”/u],
  'two weeks at once': ['Week 1 and 3\nMon back squat 4x6 80% 2 RIR', /Write one week, “Week 1”/u],
  'two short weeks at once': ['W1/W3 Mon back squat 4x6 80% 2 RIR', /Write one week, “Week 1”/u],
  'a week that is another one again': [block('Week 3: as week 1'), /“Copy week” makes the others of it/u],
  'a week that is the same': [block('Week 3 same'), /“Copy week” makes the others of it/u],
  'weeks that repeat': [block('Repeat for 4 weeks'), /“Copy week” makes the others of it/u],
  'a thirteenth week': [block('Week 13\nMon back squat 4x6 80% 2 RIR'), /A programme spans 12 weeks/u],
  'a week of no number': [block('Week 0\nMon back squat 4x6 80% 2 RIR'), /A programme spans 12 weeks/u],
  'a day beyond the block': [block('Day 85: back squat 4x6 80% 2 RIR'), /a day from 1 to 84/u],
  'an eighth day of a week': [block('Week 3 Day 8: back squat 4x6 80% 2 RIR'), /weeks of seven days/u],
  'a week without a day': [block('Week 3\nback squat 4x6 80% 2 RIR'), /Write a day above it/u],
};
