import { proxy } from "comlink";
import { create } from "zustand";
import type { Project } from "../../../core/project/index.ts";
import { download, fileNameOf, printPdf } from "../../files/index.ts";
import { type PagesAhead, type PaperKind, startCore } from "../../worker/index.ts";

/** What can be written: either PDF as a file or straight to the printer, or all files as one archive. */
export type Writing =
  | { readonly what: "file" | "printer"; readonly kind: PaperKind }
  | { readonly what: "everything" };

/** How far writing has come: pages, or where all files are made, pages and files. */
export interface WritingNow {
  readonly what: Writing["what"];
  readonly done: number;
  readonly all: number;
}

/** Work on paper that takes a while, and runs in a core of its own so that it can be stopped at once. */
export interface PaperStore {
  /** The pages as they would be made now, of the kind that is looked at. */
  readonly ahead: PagesAhead | undefined;
  /** What those pages were drawn from. */
  readonly aheadOf: { readonly project: Project; readonly kind: PaperKind } | undefined;
  readonly writing: WritingNow | undefined;
  readonly failure: string | undefined;
  lookAhead(project: Project, kind: PaperKind): void;
  write(project: Project, wanted: Writing): Promise<void>;
  writeReport(project: Project): Promise<void>;
  cancel(): void;
}

type RunningCore = ReturnType<typeof startCore>;

export const usePaper = create<PaperStore>()((set, get) => {
  let looking: RunningCore | undefined;
  let writing: RunningCore | undefined;
  let asked = 0;
  return {
    ahead: undefined,
    aheadOf: undefined,
    writing: undefined,
    failure: undefined,

    lookAhead: (project, kind) => {
      asked += 1;
      const question = asked;
      looking ??= startCore();
      looking.core.pages(project, kind).then(
        (ahead) => {
          if (question === asked) set({ ahead, aheadOf: { project, kind }, failure: undefined });
        },
        (error: unknown) => {
          if (question === asked)
            set({ ahead: undefined, aheadOf: { project, kind }, failure: String(error) });
        },
      );
    },

    write: async (project, wanted) => {
      if (writing) return;
      const core = startCore();
      writing = core;
      set({ writing: { what: wanted.what, done: 0, all: 0 }, failure: undefined });
      const onPage = proxy((done: number, all: number) => {
        if (writing === core) set({ writing: { what: wanted.what, done, all } });
      });
      try {
        handOver(await bytesOf(core, project, { wanted, onPage }), project, wanted);
      } catch (error) {
        set({ failure: String(error) });
      }
      get().cancel();
    },

    writeReport: async (project) => {
      looking ??= startCore();
      try {
        const text = await looking.core.report(project);
        download(new Blob([text], { type: "application/json" }), `${fileNameOf(project.title)}-report.json`);
      } catch (error) {
        set({ failure: String(error) });
      }
    },

    cancel: () => {
      writing?.stop();
      writing = undefined;
      set({ writing: undefined });
    },
  };
});

const bytesOf = (
  { core }: RunningCore,
  project: Project,
  { wanted, onPage }: { readonly wanted: Writing; readonly onPage: (done: number, all: number) => void },
): Promise<Uint8Array<ArrayBuffer>> =>
  wanted.what === "everything" ? core.pack(project, onPage) : core.pdf(project, wanted.kind, onPage);

const ENDINGS: Readonly<Record<PaperKind, string>> = { templates: "templates", book: "build-book" };

/** Gives the builder what was written: as a file, or into the print dialog of the browser. */
function handOver(bytes: Uint8Array<ArrayBuffer>, { title }: Project, wanted: Writing): void {
  const name = fileNameOf(title);
  if (wanted.what === "everything") {
    download(new Blob([bytes], { type: "application/zip" }), `${name}-everything.zip`);
    return;
  }
  const pdf = new Blob([bytes], { type: "application/pdf" });
  if (wanted.what === "printer") printPdf(pdf);
  else download(pdf, `${name}-${ENDINGS[wanted.kind]}.pdf`);
}
