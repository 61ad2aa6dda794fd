// Shows only the functions in whose texts every typed word is found.
const search = document.getElementById("search");
if (search) {
  const found = document.getElementById("found");
  const entries = [...document.querySelectorAll("[data-words]")];
  const show = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const entry of entries) {
      entry.hidden = !words.every((word) => entry.dataset.words.includes(word));
      count += entry.hidden ? 0 : 1;
    }
    for (const family of document.querySelectorAll("main section")) {
      family.hidden = !family.querySelector("[data-words]:not([hidden])");
    }
    found.textContent =
      words.length === 0 ? "" : count === 0 ? found.dataset.none : `${count} / ${entries.length}`;
  };
  search.addEventListener("input", show);
  show();
}
