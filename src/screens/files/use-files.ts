/** The papers of a form that came as a file: kept at once, named, removed and put back. The draft holds what they are called. */
import { type FiledPaper, mostFiles } from '../../ledger/entries/files';
import type { FileFieldProps } from '../../ui/file-field';
import { useKept } from '../photos/use-kept';
import { useShell } from '../shell';
import { fileFaultWords, fileWords, sizeText } from './words';

/** A form that has files; any `Form` whose schema has `files: Files` is one. */
type FormWithFiles = {
  readonly value: { readonly files: readonly FiledPaper[] };
  readonly latest: () => { readonly files: readonly FiledPaper[] };
  readonly change: (change: { readonly files: FiledPaper[] }) => void;
};

type FormFiles = {
  /** For `<FileField>`. */
  readonly field: FileFieldProps;
  /** As of `usePhotos`: all of them once they are kept, or null when one could not be. */
  readonly settled: () => Promise<FiledPaper[] | null>;
};

export function useFiles(form: FormWithFiles, label: string = fileWords.label): FormFiles {
  const { keepFile, sign } = useShell();
  const { field, settled } = useKept<FiledPaper>({
    latest: () => form.latest().files,
    change: (files) => form.change({ files }),
    most: mostFiles,
    keep: async (file) => {
      const kept = await keepFile(file);
      return kept.ok ? kept.file : fileFaultWords(kept.fault);
    },
    tooMany: fileWords.tooMany,
  });
  const files = form.value.files.map(({ hash, name, bytes }) => ({
    hash,
    name,
    second: sizeText(bytes, sign.value),
  }));
  const hint = files.length === 0 ? fileWords.field.optional : undefined;
  return {
    field: { ...field, label, files, accept: 'application/pdf', words: fileWords.field, hint },
    settled,
  };
}
