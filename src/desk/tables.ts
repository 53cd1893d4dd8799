import { handOver } from '../handover/handOver.ts';
import { asText, worst, type FileToWrite, type Outcome } from './outcome.ts';
import { printable } from './printable.ts';
import { byFlight, openAll, troubleWith, type OneFlight, type Source } from './sources.ts';

/** What is handed over of every flight, named after its timeline file. Nothing is written unless all files can be read. */
export function tables(
  sources: readonly Source[],
  { into, build }: { readonly into: string; readonly build: string },
): Outcome {
  const { opened, refused, code } = openAll(sources);
  const trouble = opened.flatMap((file) =>
    troubleWith(file).map((words) => `${file.name}: ${words}`),
  );
  if (refused.length > 0) {
    const err = asText([...refused, 'Nothing was written.'].map(printable));
    return { code, out: '', err, files: [] };
  }
  const files = byFlight(opened).flatMap((flight) => filesOf(flight, into, build));
  return {
    code: worst([code, trouble.length > 0 ? 1 : 0]),
    out: asText(files.map(({ path }) => printable(path))),
    err: asText(trouble.map(printable)),
    files,
  };
}

function filesOf(flight: OneFlight, into: string, build: string): readonly FileToWrite[] {
  const files = flight.files.map(({ name }) => name);
  const folder = into.replace(/[/\\]+$/, '');
  return handOver(flight.entries, { build, files }).map(({ name, content }) => ({
    path: `${folder}/${name}`,
    content,
  }));
}
