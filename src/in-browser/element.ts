/** @example element("li", "one") // <li>one</li> */
export function element<Name extends keyof HTMLElementTagNameMap>(name: Name, ...inside: (Node | string)[]) {
  const made = document.createElement(name);
  made.append(...inside);
  return made;
}
