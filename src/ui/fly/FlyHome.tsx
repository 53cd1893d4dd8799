import { Entries } from './Entries.tsx';
import { useFly } from './flyContext.ts';
import { hasControls } from './flyState.ts';
import type { Places } from './places.ts';
import { Live } from './Live.tsx';
import { OpenPanel } from './OpenPanel.tsx';
import { Opens } from './Opens.tsx';
import { Phases, ThemeKey } from './Phases.tsx';
import { Place } from './Place.tsx';
import { isAskedAtPad, useQuery } from './QueryStrip.tsx';
import { Remind } from './Remind.tsx';
import { StateKeys } from './StateKeys.tsx';
import { StateLegend } from './StateLegend.tsx';
import { Tiles } from './Tiles.tsx';
import { Top } from './Top.tsx';
import { BackKeys, UndoKey } from './Undo.tsx';
import { WingMap } from './WingMap.tsx';
import { MOST_ON_MAP, mostPanelsAWing } from './wingState.ts';

/** What stands on Fly at all times, less what an open pad or panel covers. */
export function FlyHome() {
  const { layout, ui, state, sheet } = useFly();
  const asked = useQuery();
  const query = isAskedAtPad(ui.pad) ? asked : null;
  const { places } = layout;
  const queryTakesBack =
    query !== null && places.queryKeys.y === places.back.y && places.queryKeys.x === places.back.x;
  const underPad = ui.pad !== null && hasControls(ui.pad) ? layout.underCells : layout.underPad;
  const stands = (name: keyof Places): boolean =>
    !(ui.pad !== null && underPad.includes(name)) &&
    !(ui.pad === null && ui.panel !== null && layout.underPanel.includes(name));
  return (
    <>
      <Place at={places.top} label="Clock and saved count">
        <Top />
      </Place>
      <Place at={places.opens} label="Open intervals">
        <Opens />
      </Place>
      {stands('remind') ? (
        <Place at={places.remind} label="Reminder">
          <Remind />
        </Place>
      ) : null}
      {stands('live') ? (
        <Place at={places.live} label="Fuel-flow reduction, live">
          <Live />
        </Place>
      ) : null}
      {stands('phases') ? (
        <Place at={places.phases} label="Phase of flight">
          <Phases />
        </Place>
      ) : null}
      {stands('theme') && places.theme !== null ? (
        <Place at={places.theme} label="Theme">
          <ThemeKey />
        </Place>
      ) : null}
      {stands('tiles') ? (
        <Place at={places.tiles} label={`Events, ${state.phase}`}>
          <Tiles />
        </Place>
      ) : null}
      {stands('wing') && places.wing !== null ? (
        <Place at={places.wing} label="Wing map">
          <WingMap />
        </Place>
      ) : null}
      {stands('states') && places.states !== null ? (
        <Place at={places.states} label="State of the chosen panel">
          {mostPanelsAWing(sheet) > MOST_ON_MAP ? (
            <StateLegend />
          ) : (
            <StateKeys withProbes={layout.screenClass !== 'thirteen'} />
          )}
        </Place>
      ) : null}
      {stands('undo') ? (
        <Place at={places.undo} label="Undo">
          <UndoKey />
        </Place>
      ) : null}
      {stands('back') && !queryTakesBack ? (
        <Place at={places.back} label="Back-date the newest entry">
          <BackKeys />
        </Place>
      ) : null}
      {query !== null && places.query.y >= places.entries.y ? null : (
        <Place at={places.entries} label="Last entries">
          <Entries inPad={ui.pad !== null} />
        </Place>
      )}
      {ui.pad === null && ui.panel !== null ? (
        <Place at={places.panel} label="Details">
          <OpenPanel panel={ui.panel} />
        </Place>
      ) : null}
    </>
  );
}
