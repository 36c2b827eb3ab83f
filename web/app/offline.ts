/** Keeps a copy of the whole program on the device, so that it opens without a network. */
export function keepProgramOnDevice(): void {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  navigator.serviceWorker.register("./offline.js").catch((error: unknown) => {
    console.warn("The program could not be kept on this device:", error);
  });
}
