import { useState, type ReactNode } from 'react';
import type { Wing } from '../../record/sheet.ts';
import { useSecond } from '../kit/time.ts';
import { CountPad } from './CountPad.tsx';
import { CoverControls, CoversPad } from './CoversPad.tsx';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { KeyPad } from './KeyPad.tsx';
import { LogPad } from './LogPad.tsx';
import { MorePad } from './MorePad.tsx';
import { NumberEcho } from './NumberEcho.tsx';
import { numberJob } from './numberJob.ts';
import { OpenPanel } from './OpenPanel.tsx';
import { Place } from './Place.tsx';
import { PressureControls, PressuresPad } from './PressuresPad.tsx';
import { ProbeControls } from './ProbeControls.tsx';
import { ProbesPad } from './ProbesPad.tsx';
import { QueryKeys, QueryWords, useQuery } from './QueryStrip.tsx';
import { SketchPad } from './SketchPad.tsx';
import { TextPad } from './TextPad.tsx';
import { useCovers } from './useCovers.ts';
import { useProbeNaming } from './useProbePad.ts';
import { WingControls } from './WingControls.tsx';
import { WingPad } from './WingPad.tsx';

/** The pad that stands where the tiles stand, and what stands beside it. */
export function OpenPad({ pad }: { readonly pad: Pad }) {
  const fly = useFly();
  const now = useSecond(fly.clock);
  const { places } = fly.layout;
  const job = numberJob(pad, fly, now);
  if (job !== null) {
    return (
      <>
        <Place at={places.echo} label={job.spec.title}>
          <NumberEcho job={job} />
        </Place>
        <Place at={places.pad} label="Number pad">
          <KeyPad pad={pad} job={job} />
        </Place>
        <Query />
      </>
    );
  }
  switch (pad.kind) {
    case 'more':
      return (
        <Place at={places.full} label="Every event">
          <MorePad page={pad.page} />
        </Place>
      );
    case 'log':
      return <LogPlaces page={pad.page} />;
    case 'wing':
      return (
        <Beside
          label="Wing"
          pad={<WingPad wing={pad.wing} />}
          controls={<WingControls wing={pad.wing} />}
        />
      );
    case 'probes':
      return <ProbePlaces pad={pad} />;
    case 'count':
      return <CountPad pad={pad} />;
    case 'sketch':
      return <SketchPad pad={pad} />;
    case 'covers':
      return <CoverPlaces pad={pad} />;
    case 'pressures':
      return (
        <Beside
          label="Probe pressures"
          pad={<PressuresPad pad={pad} />}
          controls={<PressureControls pad={pad} />}
        />
      );
    case 'text':
      return (
        <Alone label={pad.label}>
          <TextPad pad={pad} />
        </Alone>
      );
    default:
      return null;
  }
}

function Alone({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  const { layout } = useFly();
  return (
    <Place at={layout.places.pad} label={label}>
      {children}
    </Place>
  );
}

function Beside(props: {
  readonly label: string;
  readonly pad: ReactNode;
  readonly controls: ReactNode;
}) {
  const { layout } = useFly();
  const { places } = layout;
  return (
    <>
      <Place at={places.cells} label={props.label}>
        {props.pad}
      </Place>
      <Place at={places.controls} label={`${props.label}, choices`}>
        {props.controls}
      </Place>
    </>
  );
}

function Query() {
  const { layout } = useFly();
  const query = useQuery();
  return query === null ? null : (
    <>
      <Place at={layout.places.query} label="Query">
        <QueryWords query={query} />
      </Place>
      <Place at={layout.places.queryKeys} label="Answer the query">
        <QueryKeys query={query} />
      </Place>
    </>
  );
}

/** The log, with what can be done to the chosen entry beside it where the screen has room for both. */
function LogPlaces({ page }: { readonly page: number }) {
  const { layout, ui } = useFly();
  return (
    <>
      <Place at={layout.places.full} label="The log so far">
        <LogPad page={page} />
      </Place>
      {ui.panel === null || layout.panelUnderPad ? null : (
        <Place at={layout.places.panel} label="Chosen entry">
          <OpenPanel panel={ui.panel} />
        </Place>
      )}
    </>
  );
}

function ProbePlaces({ pad }: { readonly pad: Extract<Pad, { kind: 'probes' }> }) {
  const fly = useFly();
  const naming = useProbeNaming(fly, pad);
  const [wing, setWing] = useState<Wing>(pad.wing);
  const [page, setPage] = useState(0);
  return (
    <Beside
      label="Probes"
      pad={<ProbesPad wing={wing} page={page} naming={naming} />}
      controls={
        <ProbeControls
          pad={pad}
          wing={wing}
          page={page}
          naming={naming}
          onWing={(to) => {
            setWing(to);
            setPage(0);
          }}
          onPage={setPage}
        />
      }
    />
  );
}

function CoverPlaces({ pad }: { readonly pad: Extract<Pad, { kind: 'covers' }> }) {
  const fly = useFly();
  const covers = useCovers(fly, pad);
  return (
    <Beside
      label="Covers"
      pad={<CoversPad covers={covers} />}
      controls={<CoverControls covers={covers} wing={pad.wing} />}
    />
  );
}
