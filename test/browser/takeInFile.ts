import type { Scribe } from './scribe.ts';

/** On a tablet that knows nothing: looks round the demo flight and opens a file from there. */
export async function takeInFile(
  scribe: Scribe,
  file: { readonly name: string; readonly text: string },
): Promise<void> {
  await scribe.tap('start.demo');
  await scribe.tap('tab-files');
  const { page } = scribe.tablet;
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), scribe.tap('open-file')]);
  await chooser.setFiles({
    name: file.name,
    mimeType: 'application/x-ndjson',
    buffer: Buffer.from(file.text, 'utf8'),
  });
  await scribe.tap('take-in');
  await page.getByRole('status').filter({ hasText: 'added' }).waitFor();
}
