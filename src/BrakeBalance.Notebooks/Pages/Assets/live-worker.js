// Runs the calculation assembly beside the page, so that the page never waits. Asked by messages, answers by messages.
(() => {
  "use strict";
  globalThis.dotnetSidecar = true;
  const unpack = packed => new ReadableStream({ start: all => { all.enqueue(packed); all.close(); } })
    .pipeThrough(new DecompressionStream("gzip"));
  let answer = null;

  // Parts come in any order, some after they were asked for.
  const parts = new Map();
  const part = name => {
    if (!parts.has(name)) {
      const one = {};
      one.packed = new Promise(resolve => { one.take = resolve; });
      parts.set(name, one);
    }
    return parts.get(name);
  };

  // A blob is no base for relative addresses: the runtime is told another place and given its files by name, each unpacked as it is read.
  const start = async name => {
    const scripts = {};
    await Promise.all(["dotnet.js", "dotnet.runtime.js", "dotnet.native.js"].map(async name => {
      const text = (await new Response(unpack(await part(name).packed)).text())
        .replaceAll("import.meta.url", '"file:///_framework/dotnet.js"');
      scripts[name] = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
    }));
    const { dotnet } = await import(scripts["dotnet.js"]);
    // Compiling what runs often gains a tenth in a search of minutes; it halts the hand every second for up to 0.1 s.
    const steady = dotnet.withConfig({ runtimeOptions: ["--no-jiterpreter-traces-enabled"] });
    const runtime = await steady.withResourceLoader((type, name) => type === "dotnetjs"
      ? scripts[name]
      : part(name).packed.then(packed => new Response(unpack(packed), { headers: { "content-type": "application/wasm" } }))).create();
    const exported = await runtime.getAssemblyExports(name + ".dll");
    answer = name.split(".").reduce((part, word) => part[word], exported).Program.Answer;
  };

  addEventListener("message", async event => {
    const { id, name, packed, start: assembly, request, text } = event.data;
    if (name) { part(name).take(packed); return; }
    try {
      if (assembly) await start(assembly);
      postMessage({ id, reply: request ? await answer(request, text) : "{}" });
    } catch (error) {
      postMessage({ id, reply: JSON.stringify({ fault: String(error && error.message || error) }) });
    }
  });
})();
