using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Execution;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using NetMQ;
using NetMQ.Sockets;

namespace BrakeBalance.Notebooks.Jupyter;

/// <summary>Answers notebook clients: the engine that renders our pages, behind the clients' protocol.</summary>
/// <remarks>
/// Source: Jupyter client documentation, "Messaging in Jupyter", version 5.3: channels verified in the text, contents of messages from
/// memory.
/// </remarks>
internal sealed class KernelServer : IDisposable
{
    /// <summary>The version of the protocol that is spoken.</summary>
    public const string ProtocolVersion = "5.3";

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(200);
    private static readonly CSharpParseOptions Parsing = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    private readonly Wire _wire;
    private readonly RouterSocket _shell = new(), _control = new(), _stdin = new();
    private readonly ResponseSocket _heartbeat = new();
    private readonly PublisherSocket _told = new();
    private readonly NetMQSocket[] _sockets;
    private readonly Lock _telling = new();
    private readonly FailedCells _failed = new();
    private readonly Lazy<Task<InteractiveEngine>> _engine;
    private readonly CancellationTokenSource _ended = new();
    private CancellationTokenSource _running = new();
    private int _count;

    /// <summary>Opens a kernel's five doors.</summary>
    /// <param name="connection">The connection file's text: address, ports and key, chosen by the client.</param>
    /// <param name="folder">The notebook's folder.</param>
    public KernelServer(JsonObject connection, string folder)
    {
        _wire = new Wire((string?)connection["key"] ?? "");
        _sockets = [_shell, _control, _stdin, _heartbeat, _told];
        foreach ((NetMQSocket socket, string port) in _sockets.Zip(["shell", "control", "stdin", "hb", "iopub"]))
        {
            socket.Options.Linger = TimeSpan.FromSeconds(1);
            socket.Bind($"{connection["transport"]}://{connection["ip"]}:{connection[port + "_port"]}");
        }

        _engine = new(() => CellEngines.WarmAsync(new InteractiveEngine(folder, forClients: true)));
    }

    /// <summary>Answers until a client asks for the end.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        using CancellationTokenRegistration stop = cancellation.Register(_ended.Cancel);
        Task[] beside = [Task.Run(Beat, CancellationToken.None), Task.Run(() => ListenAsync(_control), CancellationToken.None)];
        _ = Task.Run(() => _engine.Value, CancellationToken.None);
        Tell("status", new() { ["execution_state"] = "starting" }, null);
        await Task.Run(() => ListenAsync(_shell), CancellationToken.None).ConfigureAwait(false);
        await Task.WhenAll(beside).ConfigureAwait(false);
    }

    public void Dispose()
    {
        foreach (NetMQSocket socket in _sockets)
        {
            socket.Dispose();
        }

        _running.Dispose();
        _ended.Dispose();
        NetMQConfig.Cleanup(block: false);
    }

    private void Beat()
    {
        while (!_ended.IsCancellationRequested)
        {
            if (_heartbeat.TryReceiveFrameBytes(Look, out byte[]? beat))
            {
                _heartbeat.SendFrame(beat!);
            }
        }
    }

    private async Task ListenAsync(RouterSocket socket)
    {
        NetMQMessage? frames = null;
        while (!_ended.IsCancellationRequested)
        {
            if (!socket.TryReceiveMultipartMessage(Look, ref frames) || _wire.Read(frames!) is not { } asked)
            {
                continue;
            }

            Tell("status", new() { ["execution_state"] = "busy" }, asked);
            JsonObject? reply;
            try
            {
                reply = await AnswerAsync(asked).ConfigureAwait(false);
            }
#pragma warning disable CA1031 // Whatever happens has to reach the client as words.
            catch (Exception exception)
#pragma warning restore CA1031
            {
                reply = Bad(Error(exception.Message));
            }

            if (reply is not null)
            {
                socket.SendMultipartMessage(_wire.Write(asked.Kind.Replace("_request", "_reply", StringComparison.Ordinal), reply, asked,
                    toSender: true));
            }

            Tell("status", new() { ["execution_state"] = "idle" }, asked);
        }
    }

    private async Task<JsonObject?> AnswerAsync(WireMessage asked)
    {
        string code = (string?)asked.Content["code"] ?? "";
        int place = (int?)asked.Content["cursor_pos"] ?? code.Length, at = Letters(code, place);
        switch (asked.Kind)
        {
            case "kernel_info_request":
                return Information();
            case "execute_request":
                return await ExecuteAsync(asked, code).ConfigureAwait(false);
            case "complete_request":
                InteractiveEngine completing = await _engine.Value.ConfigureAwait(false);
                (string[] names, int start) = await completing.CompleteAsync(code, at).ConfigureAwait(false);
                return Good(new()
                {
                    ["matches"] = Words(names),
                    ["cursor_start"] = start - code.Take(start).Count(char.IsLowSurrogate),
                    ["cursor_end"] = place,
                    ["metadata"] = new JsonObject(),
                });
            case "inspect_request":
                string? said = await (await _engine.Value.ConfigureAwait(false)).DescribeAsync(code, at).ConfigureAwait(false);
                return Good(new()
                {
                    ["found"] = said is not null,
                    ["metadata"] = new JsonObject(),
                    ["data"] = said is null ? [] : new JsonObject { [MediaTypes.Plain] = said }
                });
            case "is_complete_request":
                bool whole = SyntaxFactory.IsCompleteSubmission(CSharpSyntaxTree.ParseText(code, Parsing));
                return new() { ["status"] = whole ? "complete" : "incomplete", ["indent"] = "" };
            case "comm_info_request":
                return Good(new() { ["comms"] = new JsonObject() });
            case "history_request":
                return Good(new() { ["history"] = new JsonArray() });
            case "interrupt_request":
                await _running.CancelAsync().ConfigureAwait(false);
                return Good([]);
            case "shutdown_request":
                await _running.CancelAsync().ConfigureAwait(false);
                await _ended.CancelAsync().ConfigureAwait(false);
                return Good(new() { ["restart"] = (bool?)asked.Content["restart"] ?? false });
            default:
                return null;
        }
    }

    private async Task<JsonObject> ExecuteAsync(WireMessage asked, string code)
    {
        int count = (bool?)asked.Content["store_history"] == false ? _count : ++_count;
        Tell("execute_input", new() { ["code"] = code, ["execution_count"] = count }, asked);
        if (_running.IsCancellationRequested)
        {
            _running.Dispose();
            _running = new();
        }

        InteractiveEngine engine = await _engine.Value.ConfigureAwait(false);
        CellFailure? failure = _failed.Against(code) is { } against ? new(against, null, null) : null;
        try
        {
            if (failure is null)
            {
                if (code.Contains("#load", StringComparison.Ordinal))
                {
                    Tell("display_data", Shown(new Dictionary<string, string> { [MediaTypes.Html] = FigureAssets.ForClients }), asked);
                }

                CellRun run = await engine.RunAsync(code, _running.Token).ConfigureAwait(false);
                failure = run.Failure;
                foreach (CellOutput output in run.Outputs)
                {
                    Tell("display_data", Shown(output.Data), asked);
                }
            }
        }
        catch (OperationCanceledException)
        {
            failure = new("No longer waited for. A cell that does not end by itself goes on until the kernel is restarted.", null, null);
        }

        _failed.Ran(code, failure is not null);
        if (failure is null)
        {
            return Good(new() { ["execution_count"] = count, ["user_expressions"] = new JsonObject(), ["payload"] = new JsonArray() });
        }

        string[] said = failure.Line is { } line ? [failure.Message, $"in line {line}: {failure.SourceLine}"] : [failure.Message];
        JsonObject error = Error(said);
        Tell("error", error, asked);
        error["execution_count"] = count;
        return Bad(error);
    }

    // A client counts characters where a text has letters, of which some characters take two.
    private static int Letters(string code, int place)
    {
        int at = 0;
        for (; place > 0 && at < code.Length; place--)
        {
            at += char.IsSurrogatePair(code, at) ? 2 : 1;
        }

        return at;
    }

    private static JsonObject Shown(IReadOnlyDictionary<string, string> data) => new()
    {
        ["data"] = new JsonObject(data.Select(form => KeyValuePair.Create(form.Key,
            form.Key.EndsWith("json", StringComparison.Ordinal) ? JsonNode.Parse(form.Value) : JsonValue.Create(form.Value)))),
        ["metadata"] = new JsonObject(),
        ["transient"] = new JsonObject(),
    };

    private static JsonObject Information() => Good(new()
    {
        ["protocol_version"] = ProtocolVersion,
        ["implementation"] = KernelSetup.Name,
        ["implementation_version"] = typeof(KernelServer).Assembly.GetName().Version!.ToString(),
        ["language_info"] = new JsonObject
        {
            ["name"] = "C#",
            ["version"] = "14.0",
            ["mimetype"] = "text/x-csharp",
            ["file_extension"] = ".cs",
            ["pygments_lexer"] = "csharp",
            ["codemirror_mode"] = "text/x-csharp",
        },
        ["banner"] = "Brake balance notebooks: a calculation is no approval.",
        ["help_links"] = new JsonArray(),
    });

    private static JsonObject Error(params string[] said) =>
        new() { ["ename"] = "Error", ["evalue"] = said[0], ["traceback"] = Words(said) };

    private static JsonObject Good(JsonObject content) => WithStatus(content, "ok");

    private static JsonObject Bad(JsonObject content) => WithStatus(content, "error");

    private static JsonObject WithStatus(JsonObject content, string status)
    {
        content["status"] = status;
        return content;
    }

    private static JsonArray Words(IEnumerable<string> words) => [.. words.Select(word => (JsonNode)JsonValue.Create(word))];

    private void Tell(string kind, JsonObject content, WireMessage? parent)
    {
        lock (_telling)
        {
            _told.SendMultipartMessage(_wire.Write(kind, content, parent, toSender: false));
        }
    }
}
