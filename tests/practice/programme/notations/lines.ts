/** Ways of writing one week as plain lines. All invented. */
export const LINES: Readonly<Record<string, string>> = {
  'a day before every line': `Mon squat 4x6 80% 2 RIR spotter
Mon RDL 3x8 72.5% 3 RIR
Thu bench 3x10 70% 2 RIR spotter
Thu pulldown 3x12 65% 2 RIR`.replace('squat', 'back squat'),
  'a day before its first line': `Mon back squat 4x6 @80% RIR 2 with spotter
RDL 3x8 @72,5% RIR 3
Thu bench 3x10 @70% RIR 2 with spotter
lat pulldown 3x12 @65% RIR 2`,
  'days as headings': `Monday
Back squat 4 x 6 @ 80 % 2 RIR, spotter
RDL 3 x 8 @ 72.5 % 3 RIR

Thursday
Bench press 3 x 10 @ 70 % 2 RIR, spotter
Pulldown 3 x 12 @ 65 % 2 RIR`,
  'days as headings with what they are for': `MONDAY – lower body:
Back squat: 4x6 at 80%, 2 reps in reserve, with a spotter
RDL: 3x8 at 72.5%, 3 reps in reserve
THURSDAY (upper body)
Bench press: 3x10 at 70%, 2 reps in reserve, with a spotter
Lat pulldown: 3x12 at 65%, 2 reps in reserve`,
  'numbered days': `Day 1 – lower
back squat 4x6 80% 2RIR spotter
rdl 3x8 72.5% 3RIR
Day 4 – upper
bench press 3x10 70% 2RIR spotter
pulldown 3x12 65% 2RIR`,
  'letters of supersets': `Monday
A1) Back squat 4x6 80% 2 RIR spotter
A2) RDL 3x8 72.5% 3 RIR
Thursday
B1 Bench press 3x10 70% 2 RIR spotter
B2 Pulldown 3x12 65% 2 RIR`,
  'bullets and numbering': `Mon
- Back squat 4x6 80% 2 RIR spotter
• RDL 3x8 72.5% 3 RIR
Thu
1. Bench press 3x10 70% 2 RIR spotter
2) Pulldown 3x12 65% 2 RIR`,
  'in words': `Monday: 4 sets of 6 back squats at 80% with 2 in reserve and a spotter
Monday: 3 sets of 8 RDLs at 72.5% with 3 in reserve
Thursday: 3 sets of 10 bench presses at 70% with 2 in reserve and a spotter
Thursday: 3 sets of 12 lat pulldowns at 65% with 2 in reserve`,
  'sets and repetitions apart': `Mon – back squat – 4 sets, 6 reps, 80%, RIR 2, spotter
Mon – RDL – 3 sets, 8 reps, 72.5%, RIR 3
Thu – bench press – 3 sets, 10 reps, 70%, RIR 2, spotter
Thu – pulldown – 3 sets, 12 reps, 65%, RIR 2`,
  'labels with colons': `Monday
Exercise: back squat, sets: 4, reps: 6, load: 80%, RIR: 2, company: spotter
Exercise: RDL, sets: 3, reps: 8, load: 72.5%, RIR: 3
Thursday
Exercise: bench press, sets: 3, reps: 10, load: 70%, RIR: 2, company: spotter
Exercise: pulldown, sets: 3, reps: 12, load: 65%, RIR: 2`,
  'repetitions first, saying so': `Mon back squat 6 reps x 4 sets @ 80% 2 RIR spotter
Mon RDL 8 reps x 3 sets @ 72.5% 3 RIR
Thu bench 10 reps x 3 sets @ 70% 2 RIR spotter
Thu pulldown 12 reps x 3 sets @ 65% 2 RIR`,
  'the set before the exercise': `Mon: 4x6 @80% 2 RIR back squat (spotter)
Mon: 3x8 @72.5% 3 RIR RDL
Thu: 3x10 @70% 2 RIR bench press (spotter)
Thu: 3x12 @65% 2 RIR pulldown`,
  'effort ratings': `Mon back squat 4x6 80% RPE 8 spotter
Mon RDL 3x8 72.5% @7 RPE
Thu bench 3x10 70% RPE8 spotter
Thu pulldown 3x12 65% @RPE 8`,
  'what is left in other words': `Mon back squat 4x6 80% leave 2 in the tank, spotted
Mon RDL 3x8 72.5% 3 short of failure
Thu bench 3x10 70% 2 reps left, spotted
Thu pulldown 3x12 65% @2 in reserve`,
  'several exercises on a line': `Mon: back squat 4x6 80% 2 RIR spotter, RDL 3x8 72.5% 3 RIR
Thu: bench 3x10 70% 2 RIR spotter; pulldown 3x12 65% 2 RIR`,
  'several exercises joined by plus signs': `Mon back squat 4x6 80% 2 RIR spotter + RDL 3x8 72.5% 3 RIR
Thu bench 3x10 70% 2 RIR spotter + pulldown 3x12 65% 2 RIR`,
  'other signs for times': `Mon back squat 4×6 80% 2 RIR spotter
Mon RDL 3*8 72.5% 3 RIR
Thu bench 3 by 10 70% 2 RIR spotter
Thu pulldown 3 times 12 65% 2 RIR`,
  'the load joined by an x': `Mon back squat 4x6x80% 2 RIR spotter
Mon RDL 3x8x72.5% 3 RIR
Thu bench 3x10x70% 2 RIR spotter
Thu pulldown 3x12x65% 2 RIR`,
  'nothing between load and set': `Mon back squat 4x6,80%,2 RIR,spotter
Mon RDL 3x8,72.5%,3 RIR
Thu bench 3x10,70%,2 RIR,spotter
Thu pulldown 3x12,65%,2 RIR`,
  'rest, tempo and remarks beside the set': `Week plan, first draft
Monday
Back squat 4x6 80% 2 RIR spotter, rest 3 min, tempo 3-0-1-0
RDL 3x8 72.5% 3 RIR (2 s pause)
Thursday
Bench press 3x10 70% 2 RIR spotter, rest 2:30
Pulldown 3x12 65% 2 RIR, slow on the way up`,
  'a week above the days': `WEEK 1
Mon
back squat 4x6 80% 2 RIR spotter
RDL 3x8 72.5% 3 RIR
Thu
bench 3x10 70% 2 RIR spotter
pulldown 3x12 65% 2 RIR`,
  'weeks and days in letters': `W1D1 back squat 4x6 80% 2 RIR spotter
W1D1 RDL 3x8 72.5% 3 RIR
W1D4 bench 3x10 70% 2 RIR spotter
W1D4 pulldown 3x12 65% 2 RIR`,
  'per cent in words': `Mon back squat 4x6 80 percent of 1RM, RIR 2, spotter
Mon RDL 3x8 72.5 per cent, RIR 3
Thu bench 3x10 70 pct, RIR 2, spotter
Thu pulldown 3x12 65 % of 1 RM, RIR 2`,
  'the load first': `Mon 80% back squat 4x6 2 RIR spotter
Mon 72.5% RDL 3x8 3 RIR
Thu 70% bench 3x10 2 RIR spotter
Thu 65% pulldown 3x12 2 RIR`,
  'brackets round the parts': `Mon back squat (4x6) [80%] {2 RIR} (spotter)
Mon RDL (3x8) [72.5%] {3 RIR}
Thu bench (3x10) [70%] {2 RIR} (spotter)
Thu pulldown (3x12) [65%] {2 RIR}`,
  'tabs for indents': `Monday
\tBack squat 4x6 80% 2 RIR spotter
\tRDL 3x8 72.5% 3 RIR
Thursday
\tBench press 3x10 70% 2 RIR spotter
\tPulldown 3x12 65% 2 RIR`,
  'a day before some of several exercises': `Mon: back squat 4x6 80% 2 RIR spotter, RDL 3x8 72.5% 3 RIR; Thu: bench 3x10 70% 2 RIR spotter
pulldown 3x12 65% 2 RIR`,
  'days behind the sets': `Back squat 4x6 80% 2 RIR spotter Monday
RDL 3x8 72.5% 3 RIR (Mon)
Bench 3x10 70% 2 RIR spotter on Thursday
Pulldown Thursday 3x12 65% 2 RIR`,
  'what is left as a word': `Mon back squat 4x6 80% two in reserve, spotter
Mon RDL 3x8 72.5% RIR three
Thu bench 3x10 70% two reps left, spotter
Thu pulldown 3x12 65% two reps shy of failure`,
};
