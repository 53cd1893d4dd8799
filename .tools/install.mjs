// Whether node_modules holds what package-lock.json asks for.

/**
 * @typedef {object} LockedPackage
 * @property {string} [version]
 * @property {string} [integrity]
 * @property {boolean} [optional]
 */
/** @typedef {{ packages?: Record<string, LockedPackage> }} Lock */

/**
 * True when every locked package is installed as locked. Optional ones may be absent: they are for other machines.
 * @param {Lock} asked package-lock.json
 * @param {Lock} present node_modules/.package-lock.json
 */
export function isInstalled(asked, present) {
  const installed = present.packages ?? {};
  const locked = Object.entries(asked.packages ?? {}).filter(([path]) => path !== '');
  const known = new Set(locked.map(([path]) => path));
  return (
    Object.keys(installed).every((path) => known.has(path)) &&
    locked.every(([path, wanted]) => {
      const found = installed[path];
      if (found === undefined) return wanted.optional === true;
      return found.version === wanted.version && found.integrity === wanted.integrity;
    })
  );
}

/**
 * @param {string} version as process.versions.node gives it
 * @returns {boolean} true from 20.19 on
 */
export function isNodeRecentEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > 20 || (major === 20 && minor >= 19);
}
