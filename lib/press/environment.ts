/**
 * The environment a kernel starts with: only what it needs, the same on every machine, so that a
 * notebook shows the same text everywhere and sees nothing of the user's other settings.
 *
 * @module
 */

/** Handed on from the surroundings when set: finding programs, caches and packages. */
const HANDED_ON = [
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
];

/**
 * Builds the kernel's environment from the surroundings and the caller's own additions; an addition
 * of `undefined` removes a name.
 */
export function kernelEnvironment(
  surroundings: Readonly<Record<string, string>>,
  additions: Readonly<Record<string, string | undefined>> = {},
): Record<string, string> {
  const environment: Record<string, string> = {};
  for (const [name, value] of Object.entries(surroundings)) {
    if (HANDED_ON.includes(name) || name.startsWith("WINTERGROUND_")) environment[name] = value;
  }
  for (const [name, value] of Object.entries(additions)) {
    if (value === undefined) delete environment[name];
    else environment[name] = value;
  }
  return { ...environment, TZ: "UTC", NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" };
}
