using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Jupyter;
using NetMQ;
using NetMQ.Sockets;

namespace BrakeBalance.Notebooks.Tests.Jupyter;

/// <summary>The kernel for notebook clients, asked over its sockets as a client asks.</summary>
[Collection(EnginesCollection.Name)]
public class KernelServerTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task A_client_hears_figures_names_documentation_and_errors_in_words()
    {
        int[] ports = [.. Enumerable.Range(0, 5).Select(_ => FreePort())];
        var connection = new JsonObject { ["transport"] = "tcp", ["ip"] = "127.0.0.1", ["key"] = "secret" };
        foreach ((string door, int port) in new[] { "shell", "control", "stdin", "hb", "iopub" }.Zip(ports))
        {
            connection[door + "_port"] = port;
        }

        using var server = new KernelServer(connection, RepositoryRoot.File("notebooks"));
        Task run = server.RunAsync(default);
        using var shell = new DealerSocket($">tcp://127.0.0.1:{ports[0]}");
        using var heard = new SubscriberSocket($">tcp://127.0.0.1:{ports[4]}");
        heard.SubscribeToAnyTopic();
        var wire = new Wire("secret");

        shell.SendMultipartMessage(new Wire("another").Write("kernel_info_request", [], new WireMessage([], [], []), toSender: true));
        Assert.Equal("5.3", (string?)Ask("kernel_info_request", [])["protocol_version"]);
        JsonObject failed = Ask("execute_request", new() { ["code"] = "var x = 1;\nvar y = nowhere + 1;" });
        Assert.Equal("error", (string?)failed["status"]);
        Assert.Equal("The name 'nowhere' does not exist in the current context (CS0103)", (string?)failed["traceback"]![0]);
        Assert.Equal("in line 2: var y = nowhere + 1;", (string?)failed["traceback"]![1]);
        Assert.Contains("rests on a cell that failed", (string?)Ask("execute_request", new() { ["code"] = "y + 1" })["evalue"]);

        Assert.Equal("ok", (string?)Ask("execute_request", new()
        {
            ["code"] = "#load \"_setup.csx\"\nvar car = NotebookInput.Current.Load().Vehicle;\n"
                + "BalanceFigures.BrakeForces(new BalanceModel(car, car.LoadCases[0]))",
        })["status"]);
        Assert.True(SpinWait.SpinUntil(() => ((string?)Heard()?["text/html"])?.Contains("bb-figure", StringComparison.Ordinal) == true,
            Patience));

        JsonObject completed = Ask("complete_request", new() { ["code"] = "car.Load", ["cursor_pos"] = 8 });
        Assert.Contains("LoadCases", completed["matches"]!.AsArray().Select(name => (string?)name));
        Assert.Equal(4, (int?)completed["cursor_start"]);
        completed = Ask("complete_request", new() { ["code"] = "\"\U0001D713\" + car.Load", ["cursor_pos"] = 14 });
        Assert.Contains("LoadCases", completed["matches"]!.AsArray().Select(name => (string?)name));
        Assert.Equal(10, (int?)completed["cursor_start"]);
        Assert.Equal("ok", (string?)Ask("complete_request", new() { ["code"] = "car.", ["cursor_pos"] = 99 })["status"]);
        Assert.Equal("error", (string?)Ask("complete_request", new() { ["code"] = "car.", ["cursor_pos"] = "here" })["status"]);
        JsonObject inspected = Ask("inspect_request", new() { ["code"] = "BalanceFigures.BrakeForces", ["cursor_pos"] = 20 });
        Assert.Contains("ideal curve", (string?)inspected["data"]!["text/plain"]);
        Assert.Equal("incomplete", (string?)Ask("is_complete_request", new() { ["code"] = "var z = (1 +" })["status"]);
        Assert.Equal("ok", (string?)Ask("shutdown_request", [])["status"]);
        await run.WaitAsync(Patience);

        JsonObject Ask(string kind, JsonObject content)
        {
            shell.SendMultipartMessage(wire.Write(kind, content, new WireMessage([], [], []), toSender: true));
            NetMQMessage? frames = null;
            Assert.True(shell.TryReceiveMultipartMessage(Patience, ref frames), kind);
            WireMessage reply = wire.Read(frames!)!;
            Assert.Equal(kind.Replace("request", "reply", StringComparison.Ordinal), reply.Kind);
            return reply.Content;
        }

        JsonObject? Heard()
        {
            NetMQMessage? frames = null;
            return heard.TryReceiveMultipartMessage(Patience, ref frames) ? wire.Read(frames!)?.Content["data"] as JsonObject : null;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
