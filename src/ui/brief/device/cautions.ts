/** What has to be read and agreed before the tablet goes on board. Shortened wording, whole meaning. */
export const CAUTIONS = [
  {
    id: 'approval',
    words: 'Operator\u2019s approval and the test safety plan overrule this app.',
  },
  {
    id: 'record',
    words:
      'Record only: not an instrument, not for flying the aircraft, not for fuel planning or fuel state.',
  },
  {
    id: 'transmitters',
    words: 'Transmitters off unless approved. The app works fully offline.',
  },
  {
    id: 'secure',
    words:
      'Tablet strapped, clear of controls, egress, harness and oxygen. Stowed for take-off, landing and when told.',
  },
  {
    id: 'decompression',
    words:
      'Rapid decompression: its behaviour is shown up to our greatest height, or there is a procedure for its loss.',
  },
  {
    id: 'heat',
    words:
      'No direct sun when idle. Watch for warmth or swelling. Fire drill known: flames out, then plenty of water.',
  },
  {
    id: 'paper',
    words:
      'Paper card and pencil stay on board. A failure of this app is no reason to go on with a test or to stop it.',
  },
  {
    id: 'provisional',
    words:
      'The live figure is provisional, with its uncertainty. Decisions rest with the test team.',
  },
] as const;
