/** Who may do what a caution asks for; opening what is under pressure, burns, or carries mains power is never the owner's. */
export const WHO = {
  owner: 'You.',
  ownerOrPlumber: 'You, or a plumber.',
  plumber: 'A plumber.',
  loop: 'Someone trained for solar loops: a plumber or heating engineer.',
  gasFitter: 'A licensed gas fitter.',
  electrician: 'A licensed electrician.',
  roofer: 'A roofer, or someone qualified to judge the roof.',
  planner: 'Whoever plans the system, before it is built.',
  trades: 'Plumber, licensed gas fitter and electrician, each for the own part.',
} as const;
