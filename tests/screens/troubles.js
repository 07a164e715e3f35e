// What is wrong with the page on this screen, as far as a program can see; one sentence each.
() => {
  const FINGER_PX = 24; // WCAG 2.2, 2.5.8: the least size of a target
  const troubles = [];
  const named = (element) =>
    `${element.tagName.toLowerCase()}${element.id ? "#" + element.id : ""}` +
    `${typeof element.className === "string" && element.className ? "." + element.className.trim().replace(/\s+/g, ".") : ""}` +
    ` "${(element.innerText || element.getAttribute("aria-label") || "").trim().slice(0, 30)}"`;
  const seen = (element) => {
    const box = element.getBoundingClientRect();
    const shown = element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    return shown && box.width > 1 && box.right > 0; // a closed drawer stands left of the screen
  };

  /** Whether something around it can be scrolled sideways. */
  const scrolls = (element) =>
    element && (/auto|scroll/.test(getComputedStyle(element).overflowX) || scrolls(element.parentElement));

  const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  if (wide > 0) troubles.push(`the page is ${wide} px wider than the screen`);

  for (const element of document.querySelectorAll("body *:not(svg *)")) {
    if (!seen(element)) continue;
    const style = getComputedStyle(element);
    const holdsWords = [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
    if (!holdsWords) continue;
    if (style.overflowX === "hidden" && element.scrollWidth > element.clientWidth + 1)
      troubles.push(`words cut off: ${named(element)}`);
    const box = element.getBoundingClientRect();
    if (style.position !== "fixed" && box.right > document.documentElement.clientWidth + 1 && !scrolls(element))
      troubles.push(`words beyond the edge: ${named(element)}`);
  }

  const targets = [...document.querySelectorAll("a[href], button, input:not([type=hidden]), select, summary")].filter(
    (element) => seen(element) && !element.closest("svg") && getComputedStyle(element).pointerEvents !== "none",
  );
  for (const target of targets) {
    const box = target.getBoundingClientRect();
    const inline = target.tagName === "A" && getComputedStyle(target).display === "inline";
    if (!inline && Math.min(box.width, box.height) < FINGER_PX && !target.labels?.length)
      troubles.push(`a target of ${Math.round(box.width)}x${Math.round(box.height)} px: ${named(target)}`);
    const x = box.left + box.width / 2;
    const y = box.top + box.height / 2;
    if (x < 0 || y < 0 || x > innerWidth || y > innerHeight) continue;
    const top = document.elementFromPoint(x, y);
    if (top && !target.contains(top) && !top.contains(target) && !top.closest("label"))
      troubles.push(`covered by ${named(top)}: ${named(target)}`);
  }
  return [...new Set(troubles)];
};
