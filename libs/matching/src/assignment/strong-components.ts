const NONE = -1;

/**
 * Which nodes of a directed graph can reach each other both ways: the strongly connected components, by Tarjan's algorithm
 * without recursion.
 *
 * Source: Tarjan, SIAM J. Computing 1(2), 1972 (from memory).
 *
 * @param nodeCount - nodes 0 … nodeCount − 1
 * @param arcs - for each node the nodes it leads to
 * @returns for each node the number of its component
 * @example strongComponents(3, [[1], [0, 2], []]) // nodes 0 and 1 share a number, node 2 has its own
 */
export function strongComponents(nodeCount: number, arcs: readonly (readonly number[])[]): Int32Array {
  const order = new Int32Array(nodeCount).fill(NONE);
  const low = new Int32Array(nodeCount);
  const component = new Int32Array(nodeCount).fill(NONE);
  const nextArc = new Int32Array(nodeCount);
  const open: number[] = [];
  const path: number[] = [];
  let visited = 0;
  let components = 0;
  const enter = (node: number): void => {
    order[node] = visited;
    low[node] = visited;
    visited += 1;
    open.push(node);
    path.push(node);
  };
  const lower = (node: number, value: number): void => {
    low[node] = Math.min(low[node] ?? 0, value);
  };
  const close = (root: number): void => {
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      component[node] = components;
      if (node === root) break;
    }
    components += 1;
  };
  for (let root = 0; root < nodeCount; root += 1) {
    if (order[root] !== NONE) continue;
    enter(root);
    for (let node = path.at(-1); node !== undefined; node = path.at(-1)) {
      const target = arcs[node]?.[nextArc[node] ?? 0];
      nextArc[node] = (nextArc[node] ?? 0) + 1;
      if (target !== undefined) {
        if (order[target] === NONE) enter(target);
        else if (component[target] === NONE) lower(node, order[target] ?? 0);
        continue;
      }
      path.pop();
      const parent = path.at(-1);
      if (parent !== undefined) lower(parent, low[node] ?? 0);
      if (low[node] === order[node]) close(node);
    }
  }
  return component;
}
