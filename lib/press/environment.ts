/**
 * The environment a kernel starts with: only what it needs, the same on every machine, so that a
 * notebook shows the same text everywhere and sees nothing of the user's other settings.
 *
 * @module
 */

/** Handed on from the surroundings when set: finding programs, caches, packages and the study. */
export const HANDED_ON = [
  "PATH",
  "HOME",
  "DENO_DIR",
  "XDG_CACHE_HOME",
  "TMPDIR",
  // Windows
  "USERPROFILE",
  "LOCALAPPDATA",
  "SYSTEMROOT",
  "TEMP",
  "TMP",
  // package downloads behind a proxy
  "HTTP_PROXY",
  "HTTPS_PROXY",
  "NO_PROXY",
  "http_proxy",
  "https_proxy",
  "no_proxy",
  "NPM_CONFIG_REGISTRY",
  "DENO_CERT",
  "DENO_TLS_CA_STORE",
  "SSL_CERT_FILE",
  "SSL_CERT_DIR",
  "NODE_EXTRA_CA_CERTS",
  // the study a notebook belongs to
  "WINTERGROUND_STUDY",
  "WINTERGROUND_CLIMATE",
  "WINTERGROUND_COLUMNS",
  "WINTERGROUND_CACHE",
  "WINTERGROUND_GREENHOUSE_LOG",
  // where the files of a lesson lie
  "WINTERGROUND_LESSONS",
  // the one time that is written, where it is given
  "SOURCE_DATE_EPOCH",
] as const;

/**
 * Builds the kernel's environment from the surroundings and the caller's own additions; an addition
 * of `undefined` removes a name.
 *
 * @param value gives a variable of the surroundings
 */
export function kernelEnvironment(
  value: (name: string) => string | undefined,
  additions: Readonly<Record<string, string | undefined>> = {},
): Record<string, string> {
  const environment: Record<string, string> = {};
  for (const name of HANDED_ON) {
    const found = value(name);
    if (found !== undefined) environment[name] = found;
  }
  for (const [name, added] of Object.entries(additions)) {
    if (added === undefined) delete environment[name];
    else environment[name] = added;
  }
  return { ...environment, TZ: "UTC", NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" };
}
