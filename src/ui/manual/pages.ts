export interface ManualSection {
  readonly head: string;
  readonly lines: readonly string[];
}

export const AIR: readonly ManualSection[] = [
  {
    head: 'A touch is the time',
    lines: [
      'The time of an event is the moment your finger meets the tile. The entry is made when you lift it, so a slip can still slide away; the time is kept as unconfirmed until you Keep or Drop it.',
      'The count at the top is what survives a crash. NOT SAVED means that the tablet could not write yet: go on, nothing is thrown away, and say so on the intercom.',
    ],
  },
  {
    head: 'Put it right',
    lines: [
      'Undo takes back the newest entry and names it. It stays in the record, struck out. The keys −10 s to −5 min move the newest or the chosen entry back; they add up, and the touch time stays beside it.',
      'Log pages through the flight so far. Choose an entry to back-date, note, amend or withdraw it. Missed something? Touch Mark now and say later what it was.',
    ],
  },
  {
    head: 'Read the fuel',
    lines: [
      'One box a digit, as the gauge shows them. Enter saves and goes on to the next gauge: engines, suction unit, counters, air data. Stop where you like; what was entered stands.',
      'A question never blocks: it offers what the slip may have been. Re-read the gauge, not the screen. A queried value stays out of the figure until you Keep it.',
    ],
  },
  {
    head: 'The live figure',
    lines: [
      'Fuel flow against the suction-off baseline at the same weight over pressure ratio, with its 95 % interval and its age. Struck through: a gate is broken and named, so do not use it. No figure: the reason stands in its place.',
      'It is called drag reduction only where the flight sheet has an engine map. It is provisional; decisions rest with the test team.',
    ],
  },
  {
    head: 'Stop words',
    lines: [
      'Stop takes one touch. It closes the open point and never the log.',
      'Put the tablet down whenever you are told to, or want both hands: nothing in it waits for you.',
    ],
  },
];

export const GROUND: readonly ManualSection[] = [
  {
    head: 'Before flight',
    lines: [
      'Brief: copy a flight sheet or fill a blank, page by page. What is doubtful is listed and never blocks. Run the tablet check; an open line names its risk. Open the flight, then take a time hack with all clocks: touch on the word, afterwards enter what each clock showed.',
      'A flight opened as practice says so on every page and in its file name.',
    ],
  },
  {
    head: 'After flight',
    lines: [
      'Debrief: one axis for everything. Touch a mark to see its entry; amend or withdraw with a reason. Every result follows at once, and the entry as it was first read stays.',
      'Sign when open items are answered or listed. Later facts, such as lab results, attach after the signature.',
    ],
  },
  {
    head: 'Copies',
    lines: [
      'Saved means on this tablet. Save the timeline file and open it once on another machine: only that survives the tablet.',
      'Opening a file merges it. Damaged lines are named and put aside; your own record is never touched.',
    ],
  },
  {
    head: 'Cautions',
    lines: [
      'The operator’s approval and the test safety plan overrule this app. It is a record: not an instrument, not for flying, navigating or fuel planning.',
      'Transmitters off unless approved. Secure or strap the tablet clear of controls, egress, harness and oxygen; stow it for take-off and landing and when told.',
      'Rapid decompression: its behaviour up to the highest altitude must have been shown, or there must be a procedure for its loss. Heat: no direct sun when idle; watch for warmth or swelling; flames out, then cool with plenty of water.',
      'Paper card and pencil stay on board. A failure of the app is no reason to continue or to stop a test.',
    ],
  },
];
