/** Ways of writing the week that are refused, each with the fix that its message has to name. All invented. */
const week = (squat: string) => `Mon
${squat}
RDL 3x8 72.5% 3 RIR
Thu
bench press 3x10 70% 2 RIR spotter
pulldown 3x12 65% 2 RIR`;

/** By name: the text, and the fix. */
export const REFUSED: Readonly<Record<string, readonly [text: string, fix: RegExp]>> = {
  'repetitions set by set': [
    week('back squat 8/6/4/4 80% 2 RIR spotter'),
    /a line for each set: “1x8”, “1x6”, “1x4”, “1x4”/u,
  ],
  'repetitions set by set after the sets': [
    week('back squat 4x8,6,4,4 80% 2 RIR spotter'),
    /a line for each set: “1x8”/u,
  ],
  'a last set of as many as possible': [week('back squat 4x6+ 80% 2 RIR spotter'), /“4x6” without the plus/u],
  'as many repetitions as possible': [
    week('back squat 4x AMRAP 80% spotter'),
    /repetitions that you expect, and 0 in reserve/u,
  ],
  'as many as possible in words': [
    week('back squat 4 sets, as many reps as possible, 80%, spotter'),
    /repetitions that you expect/u,
  ],
  'seconds for repetitions': [week('back squat 4x30s 80% 2 RIR spotter'), /Times and distances are not checked/u],
  'metres for repetitions': [week('back squat 4x20m 80% 2 RIR spotter'), /Times and distances are not checked/u],
  'a load in kilograms': [
    week('back squat 4x6 100 kg 2 RIR spotter'),
    /1RM of barbell back squat in kg, or write the load in %/u,
  ],
  'a load in pounds': [week('back squat 4x6 225lbs 2 RIR spotter'), /1RM of barbell back squat in lb/u],
  'a load, then repetitions and sets': [week('back squat 80% x 6 x 4 2 RIR spotter'), /“4x6” for 4 sets of 6/u],
  'a number after an at sign': [week('back squat 4x6 @80 2 RIR spotter'), /“80%” or “80 kg” for a load/u],
  'numbers that do not say what they are': [
    week('back squat 4 6 80% 2 RIR spotter'),
    /“4x6” for sets and repetitions/u,
  ],
  'body weight': [week('back squat 4x6 BW 2 RIR spotter'), /“possible 14”/u],
  'a weight on top of body weight': [
    week('back squat 4x6 BW+20kg 2 RIR spotter'),
    /the whole load, not what is added/u,
  ],
  'a load taken off': [week('back squat 4x6 -10% 2 RIR spotter'), /the whole load, not what is added/u],
  'per cent of something else': [
    week('back squat 4x6 80% of 5RM 2 RIR spotter'),
    /in per cent of 1RM; of anything else/u,
  ],
  'an effort rating below 5': [week('back squat 4x6 80% RPE 4 spotter'), /how many repetitions are left/u],
  'not to failure': [week('back squat 4x6 80% not to failure, spotter'), /“2 RIR”/u],
  'numbers in words': [week('back squat four sets of six 80% 2 RIR spotter'), /Write sets and repetitions, “4x6”/u],
  'two kinds of sets on a line': [
    week('back squat 2x6 80% 2x6 75% 2 RIR spotter'),
    /a line for each exercise, and for each kind of sets/u,
  ],
  'a load that nobody lifts': [week('back squat 4x6 180% 2 RIR spotter'), /above 0 and up to 100/u],
  'no load': [week('back squat 4x6 2 RIR spotter'), /“80%”, or “possible 14”/u],
  'a misspelt exercise': [week('bakc squat 4x6 80% 2 RIR spotter'), /Is it barbell back squat/u],
  'part of a name': [week('press 4x6 80% 2 RIR spotter'), /Is it leg press, or bench press/u],
  'a variant of a known exercise': [week('paused back squat 4x6 80% 2 RIR spotter'), /Is it barbell back squat/u],
  'no exercise': [week('4x6 80% 2 RIR spotter'), /Write it before the sets/u],
  'a rule for all lines': [`All of it with 2 RIR\n${week('back squat 4x6 80% 2 RIR spotter')}`, /on each of them/u],
  'a line before the first day': [
    `back squat 4x6 80% 2 RIR spotter\n${week('leg press 3x10 70% 2 RIR')}`,
    /Write a day above it/u,
  ],
  'a thirteenth week': [week('back squat 4x6 80% 2 RIR spotter').replace('Thu', 'Week 13 Thu'), /spans 12 weeks/u],
  'decimal commas between commas': [
    'Day,Exercise,Sets,Reps,%1RM,RIR\nMon,back squat,4,6,80,2\nMon,RDL,3,8,72,5,3\n',
    /decimal comma.*quotation marks, or part the cells by semicolons/u,
  ],
  'a range that became a date': [
    'Day;Exercise;Sets;Reps;%1RM;RIR\nMon;back squat;4;8-Jun;80;2\n',
    /a date that a spreadsheet made of a range/u,
  ],
  'weights under no unit': [
    'Day;Exercise;Sets;Reps;Weight;RIR\nMon;back squat;4;6;80;2\n',
    /the unit in the name of the column/u,
  ],
  'weights under “Load”': [
    'Day;Exercise;Sets;Reps;Load;RIR\nMon;back squat;4;6;80;2\nThu;leg press;3;10;140;2\n',
    /“80%” of 1RM, “80 kg” or “80 lb”/u,
  ],
  'a column of no known name': [
    'Day;Exercise;Sets;Reps;%1RM;Buffer\nMon;back squat;4;6;80;2\n',
    /Name it Sets, Reps, %1RM, kg, RIR/u,
  ],
  'a misspelt column': ['Day;Exercise;Sets;Repps;%1RM;RIR\nMon;back squat;4;6;80;2\n', /Is it “reps”/u],
  'two columns of loads': [
    'Day;Exercise;Sets;Reps;%1RM;kg;RIR\nMon;back squat;4;6;80;100;2\n',
    /remove one of the two columns/u,
  ],
  'which set it is': [
    'Day;Exercise;Set;Reps;%1RM;RIR\nMon;back squat;1;6;80;2\nMon;back squat;2;6;80;2\n',
    /Is it “sets”/u,
  ],
  'days in another language': [
    'Day;Exercise;Sets;Reps;%1RM;RIR\nMontag;back squat;4;6;80;2\n',
    /“Monday”, “Mon” or “Day 1”|Is it Monday/u,
  ],
  'days in one letter': ['Day;Exercise;Sets;Reps;%1RM;RIR\nM;back squat;4;6;80;2\n', /“Monday”, “Mon” or “Day 1”/u],
  'only numbers without a header': [
    'Mon;back squat;4;6;80;2\nMon;RDL;3;8;72.5;3\n',
    /name the columns in a row above: Day, Exercise/u,
  ],
  'two entries that contradict each other': [
    'Day;Exercise;Sets;Reps;%1RM\nMon;back squat;5;4x6;80\n',
    /a line for each exercise, and for each kind/u,
  ],
};
