// Runs the calculation assembly beside the page, so that the page never waits. Asked by messages, answers by messages.
(() => {
  "use strict";
  globalThis.dotnetSidecar = true;
  const unpack = async packed => new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip")));
  let answer = null;

  // A blob is no base for relative addresses: the runtime is told another place and given its files by name.
  const start = async parts => {
    const scripts = {}, assemblies = {};
    await Promise.all(Object.entries(parts).map(async ([name, packed]) => {
      const whole = await unpack(packed);
      if (name.endsWith(".js")) {
        const text = (await whole.text()).replaceAll("import.meta.url", '"file:///_framework/dotnet.js"');
        scripts[name] = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
      } else {
        assemblies[name] = await whole.arrayBuffer();
      }
    }));
    const { dotnet } = await import(scripts["dotnet.js"]);
    const runtime = await dotnet.withResourceLoader((type, name) => type === "dotnetjs"
      ? scripts[name]
      : Promise.resolve(new Response(assemblies[name], { headers: { "content-type": "application/wasm" } }))).create();
    answer = (await runtime.getAssemblyExports("BrakeBalance.Live.dll")).BrakeBalance.Live.Program.Answer;
  };

  addEventListener("message", async event => {
    const { id, parts, request } = event.data;
    try {
      if (parts) await start(parts);
      postMessage({ id, reply: request ? answer(request) : "{}" });
    } catch (error) {
      postMessage({ id, reply: JSON.stringify({ fault: String(error && error.message || error) }) });
    }
  });
})();
