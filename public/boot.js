// Starts the app. A file of its own, because the Content Security Policy allows
// no script inside the page. The build puts the real names of both files here.

function cannotStart(reason) {
  document.getElementById("app").hidden = true;
  document.getElementById("cannot-start-detail").textContent = `What the browser said: ${reason}`;
  document.getElementById("cannot-start").hidden = false;
}

async function start() {
  if (typeof WebAssembly !== "object") {
    throw new Error("WebAssembly is switched off");
  }
  const { default: init } = await import("./penlight.js");
  await init({ module_or_path: new URL("./penlight_bg.wasm", import.meta.url) });
}

start().catch((error) => {
  console.error(error);
  cannotStart(error);
});
