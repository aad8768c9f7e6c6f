// Runs the calculation assembly beside the page, so that the page never waits. Asked by messages, answers by messages.
(() => {
  "use strict";
  globalThis.dotnetSidecar = true;
  const unpack = packed => new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  let answer = null;

  // A blob is no base for relative addresses: the runtime is told another place and given its files by name, each unpacked as it is read.
  const start = async parts => {
    const scripts = {};
    await Promise.all(Object.keys(parts).filter(name => name.endsWith(".js")).map(async name => {
      const text = (await new Response(unpack(parts[name])).text()).replaceAll("import.meta.url", '"file:///_framework/dotnet.js"');
      scripts[name] = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
    }));
    const { dotnet } = await import(scripts["dotnet.js"]);
    const runtime = await dotnet.withResourceLoader((type, name) => type === "dotnetjs"
      ? scripts[name]
      : Promise.resolve(new Response(unpack(parts[name]), { headers: { "content-type": "application/wasm" } }))).create();
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
