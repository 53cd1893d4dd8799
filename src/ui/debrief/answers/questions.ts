/** The ten questions of a debrief, in their one order. */
export const QUESTIONS = [
  { id: 1, name: 'Drag reduction', asks: 'What came off at each point, and how sure is that?' },
  {
    id: 2,
    name: 'Flow lost',
    asks: 'Where and when was laminar flow lost, and what speaks for why?',
  },
  { id: 3, name: 'Moisture', asks: 'How long to loss and back, and what hung in the air?' },
  { id: 4, name: 'Laminar share', asks: 'How much of the wings was laminar, by area and time?' },
  {
    id: 5,
    name: 'Fuel saved',
    asks: 'What did suction save, and what was left after its own fuel?',
  },
  {
    id: 6,
    name: 'Completion',
    asks: 'What was flown of what was planned, and what is to fly again?',
  },
  { id: 7, name: 'Chronic panels', asks: 'Which panels lose flow flight after flight?' },
  { id: 8, name: 'Economics', asks: 'What did the work on the ground cost and bring?' },
  { id: 9, name: 'Clocks', asks: 'How did the clocks stand to each other?' },
  { id: 10, name: 'Fuel books', asks: 'Do the fuel books balance, and what is the odd one out?' },
] as const;
export type QuestionId = (typeof QUESTIONS)[number]['id'];
