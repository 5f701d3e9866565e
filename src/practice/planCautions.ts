/** Cautions that stand beside every plan of a study. Common practice; ethics boards and local rules come first. */
export const PLAN_CAUTIONS: readonly string[] = [
  'Nothing here judges ethics or safety. A local review board comes first, and so do its rules on who may take part.',
  'Register the protocol before the first person is measured: question, arms, measure, people and analysis.',
  'Expected is not promised: an interval can come out wider, and the answer can move.',
  'The numbers rest on few studies and on the curve fitted to them. New people, measures or training may differ more than these studies do.',
  'People are those measured before and after. Recruit more, since some will drop out.',
  'A narrower interval is not all that a study is worth: strength, fatigue, other muscles and other people are not weighed here.',
];
