let asked = false;

/** Asks the browser, once a visit, not to clear away what this device keeps when it runs short of room. */
export async function stayKept(): Promise<void> {
  const { storage } = navigator as { storage?: StorageManager };
  if (asked || storage === undefined || typeof storage.persist !== 'function') return;
  asked = true;
  if (!(await storage.persisted())) await storage.persist();
}
