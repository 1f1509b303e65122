// Tells that somebody else wrote something of the sample on the page. Without this file everything works; the page is then asked for anew by hand.
const head = document.querySelector("[data-sample]");
if (head && "EventSource" in window) {
  const news = head.querySelector(".news");
  const source = new EventSource(`/api/changes?sample=${head.dataset.sample}`);
  source.addEventListener("entry", () => { news.hidden = false; });
  window.addEventListener("pagehide", () => source.close());
}
