import type { EntryId } from '../../../record/brand.ts';
import type { Body } from '../../../record/entry.ts';
import type { FlightView } from '../../../record/flight.ts';

export type Squawk = Body<'squawkRaised'> & {
  readonly by: EntryId;
  /** Actions that name it, in order of time. */
  readonly actions: readonly Body<'maintenanceDone'>[];
};

/** Standing squawks in order of writing, each with what was done about it. */
export function squawksOf(view: FlightView): readonly Squawk[] {
  const standing = view.standing.filter((one) => one.standing === 'stands');
  const actions = standing.flatMap(({ effective }) =>
    effective.kind === 'maintenanceDone' ? [effective.body] : [],
  );
  return standing.flatMap(({ effective, entry }) =>
    effective.kind === 'squawkRaised'
      ? [
          {
            ...effective.body,
            by: entry.id,
            actions: actions.filter(({ squawk }) => squawk === effective.body.squawk),
          },
        ]
      : [],
  );
}
