/** What crosses between the page and the engine's worker: plain objects and JSON text, nothing else. */

/** The engine, the core's files for the first figures, and the rest of them. */
export type Parts =
  /** Addresses. */
  | { kind: "beside"; wasm: string; first: string; rest: string }
  /** The content, gzipped in base64. */
  | { kind: "within"; wasm: string; first: string; rest: string };

export type ToWorker =
  | { kind: "start"; parts: Parts }
  | { kind: "make-image"; parts: Parts }
  /** working: with the numbers put into each formula. */
  | { kind: "work"; ticket: number; name: string; text: string; working: boolean }
  | { kind: "describe" };

export type FromWorker =
  | { kind: "ready"; fromImage: boolean }
  | { kind: "image-made" }
  | { kind: "failed"; error: PlainError }
  | { kind: "described"; text: string | undefined }
  | { kind: "answer"; ticket: number; text: string }
  | { kind: "broken"; ticket: number; error: PlainError };

/** An error with everything of it that survives the crossing. */
export interface PlainError {
  type: string;
  message: string;
}

export function plainError(error: unknown): PlainError {
  if (error instanceof Error) {
    const type = (error as { type?: unknown }).type;
    return { type: typeof type === "string" ? type : error.name, message: error.message };
  }
  return { type: "Error", message: String(error) };
}
