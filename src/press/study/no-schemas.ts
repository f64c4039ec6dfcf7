/**
 * Stands in for the schema library in the page's bundle: the attributes of every directive were read when the packet was
 * built, and come as JSON, so no schema is ever run there. Whatever is asked of it is itself again. It keeps two thirds
 * out of the bundle.
 */
const anything: unknown = new Proxy(() => anything, {
  get: (_target, name) => (typeof name === 'symbol' ? undefined : anything),
  apply: () => anything,
});

export { anything as z };
