/** Ways of writing one week as a table; `»` stands for a tab. All invented. */
const tabs = (text: string) => text.replaceAll('»', '\t');

export const TABLES: Readonly<Record<string, string>> = {
  'the site’s own form': `day,exercise,sets,repetitions,load,possible,reserve,company
Monday,barbell back squat,4,6,80,,2,spotter
Monday,Romanian deadlift,3,8,72.5,,3,alone
Thursday,bench press,3,10,70,,2,spotter
Thursday,pulldown,3,12,65,,2,alone
`,
  'columns in another order, without those that may be empty': `reserve,company,load,exercise,sets,repetitions,day
2,spotter,80,barbell back squat,4,6,1
3,,72.5,Romanian deadlift,3,8,1
2,spotter,70,bench press,3,10,4
2,,65,pulldown,3,12,4`,
  'short headers, tabs and short days': tabs(`Day»Exercise»Sets»Reps»%1RM»RIR»Spotter
Mon»Back squat»4»6»80»2»yes
Mon»RDL»3»8»72.5»3»no
Thu»Bench»3»10»70»2»yes
Thu»Lat pulldown»3»12»65»2»no`),
  'semicolons, decimal commas and per cent signs': `Day;Lift;Sets;Reps;Load;RIR;Company
Mo.;Back squat;4;6;80 %;2;spotter
Mo.;RDL;3;8;72,5 %;3;
Th.;Bench press;3;10;70 %;2;spotter
Th.;Pulldowns;3;12;65 %;2;`,
  'commas, decimal commas in quotation marks':
    `Day,Exercise,Sets,Reps,%,RIR,Company
Mon,Squat (back),4,6,"80,0",2,spotter
`.replace('Squat (back)', 'Back squat') +
    `Mon,RDL,3,8,"72,5",3,
Thu,Bench,3,10,70,2,spotter
Thu,Pulldown,3,12,65,2,
`,
  'a title, blank rows and a remark above and below': tabs(`Winter block 3»»»»»»
»»»»»»
Written for a club that does not exist»»»»»»
Day»Movement»Sets»Repetitions»% of 1RM»Reps in reserve»Spotter
Monday»Back Squat»4»6»80%»2»x
Monday»RDL»3»8»72.5%»3»
»»»»»»
Thursday»Bench Press»3»10»70%»2»x
Thursday»Lat Pull-Down»3»12»65%»2»
»»»»»»
Warm up well»»»»»»`),
  'a day in its first row only': tabs(`Day»Exercise»Sets»Reps»Load %»RIR»Company
Monday»Back squat»4»6»80»2»spotter
»RDL»3»8»72,5»3»
Thursday»Bench press»3»10»70»2»spotter
»Pulldown»3»12»65»2»`),
  'a row for each day, then its lines': tabs(`Exercise»Sets»Reps»%1RM»RIR»Spotter
Monday»»»»»
Back squat»4»6»80»2»y
RDL»3»8»72.5»3»n
Thursday»»»»»
Bench press»3»10»70»2»y
Pulldown»3»12»65»2»n`),
  'a header for each day': tabs(`Monday – lower
Exercise»Sets»Reps»%1RM»RIR»Spotter
Back squat»4»6»80»2»y
RDL»3»8»72.5»3»n

Thursday – upper
Exercise»Reps»Sets»RIR»%1RM»Spotter
Bench press»10»3»2»70»y
Pulldown»12»3»2»65»n`),
  'sets and repetitions in one cell': tabs(`Day»Exercise»Sets x Reps»%1RM»RIR»Company
Mon»Back squat»4x6»80»2»spotter
Mon»RDL»3 x 8»72.5»3»
Thu»Bench press»3×10»70»2»spotter
Thu»Pulldown»3 X 12»65»2»`),
  'repetitions and sets in one cell, in the header’s order': tabs(`Day»Exercise»Reps x Sets»%1RM»RIR»Company
Mon»Back squat»6x4»80»2»spotter
Mon»RDL»8x3»72.5»3»
Thu»Bench press»10x3»70»2»spotter
Thu»Pulldown»12x3»65»2»`),
  'all of the set in one cell': tabs(`Day»Exercise»Scheme
Mon»Back squat»4x6@80% 2 RIR, spotter
Mon»RDL»3x8@72.5% 3 RIR
Thu»Bench press»3x10@70% 2 RIR, spotter
Thu»Pulldown»3x12@65% 2 RIR`),
  'effort ratings out of ten': tabs(`Day»Exercise»Sets»Reps»%1RM»RPE»Spotter
Mon»Back squat»4»6»80»8»yes
Mon»RDL»3»8»72.5»7»no
Thu»Bench press»3»10»70»8»yes
Thu»Pulldown»3»12»65»8»no`),
  'loads as shares, as a spreadsheet keeps them': tabs(`Day»Exercise»Sets»Reps»%1RM»RIR»Spotter
Mon»Back squat»4»6»0.8»2»yes
Mon»RDL»3»8»0,725»3»no
Thu»Bench press»3»10»0.7»2»yes
Thu»Pulldown»3»12»0.65»2»no`),
  'days as columns': tabs(`Monday»Thursday
Back squat 4x6 80% 2 RIR spotter»Bench press 3x10 70% 2 RIR spotter
RDL 3x8 72.5% 3 RIR»Pulldown 3x12 65% 2 RIR`),
  'days as columns beside the exercises': tabs(`Exercise»Mon»Thu
Back squat»4x6 80% RIR 2 with spotter»
RDL»3x8 72,5% RIR 3»
Bench press»»3x10 70% RIR 2 with spotter
Pulldown»»3x12 65% RIR 2`),
  'no header, each cell saying what it is': tabs(`Mon»Back squat»4x6»80%»2 RIR»spotter
Mon»RDL»3x8»72.5%»3 RIR»
Thu»Bench press»3x10»70%»2 RIR»spotter
Thu»Pulldown»3x12»65%»2 RIR»`),
  'no header, sets and repetitions side by side': `Mon;Back squat;4;6;80%;RIR 2;spotter
Mon;RDL;3;8;72,5%;RIR 3;
Thu;Bench press;3;10;70%;RIR 2;spotter
Thu;Pulldown;3;12;65%;RIR 2;`,
  'lines drawn between cells': `| Day | Exercise    | Sets | Reps | %1RM | RIR | Spotter |
|-----|-------------|------|------|------|-----|---------|
| Mon | Back squat  | 4    | 6    | 80   | 2   | yes     |
| Mon | RDL         | 3    | 8    | 72.5 | 3   | no      |
| Thu | Bench press | 3    | 10   | 70   | 2   | yes     |
| Thu | Pulldown    | 3    | 12   | 65   | 2   | no      |`,
  'columns that are not read': tabs(`#»Day»Exercise»Tempo»Sets»Reps»%1RM»RIR»Rest»Spotter»Notes
1»Mon»Back squat»3010»4»6»80»2»3 min»yes»brace first
2»Mon»RDL»»3»8»72.5»3»2 min»no»
3»Thu»Bench press»»3»10»70»2»3 min»yes»pause each one
4»Thu»Pulldown»»3»12»65»2»90 s»no»`),
  'week and day in columns of their own': tabs(`Week»Day»Exercise»Sets»Reps»%1RM»RIR»Spotter
1»1»Back squat»4»6»80»2»yes
1»1»RDL»3»8»72.5»3»no
1»4»Bench press»3»10»70»2»yes
1»4»Pulldown»3»12»65»2»no`),
  'letters of supersets before the exercises': tabs(`Day»Exercise»Sets»Reps»%1RM»RIR»Spotter
Mon»A1) Back squat»4»6»80»2»yes
Mon»A2) RDL»3»8»72.5»3»no
Thu»B1. Bench press»3»10»70»2»yes
Thu»B2. Pulldown»3»12»65»2»no`),
  'capitals, other line breaks and a byte-order mark': `\ufeff${tabs(`DAY»EXERCISE»SETS»REPS»LOAD %»RIR»SPOTTER
MON»BACK SQUAT»4»6»80%»2»YES
MON»RDL»3»8»72.5%»3»NO
THU»BENCH PRESS»3»10»70%»2»YES
THU»LAT PULLDOWN»3»12»65%»2»NO`).replaceAll('\n', '\r\n')}`,
};
