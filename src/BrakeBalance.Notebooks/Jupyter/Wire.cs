using System.Security.Cryptography;
using System.Text.Json.Nodes;
using NetMQ;

namespace BrakeBalance.Notebooks.Jupyter;

/// <summary>A message of the protocol between notebook clients and kernels.</summary>
internal sealed record WireMessage(IReadOnlyList<byte[]> Identities, JsonObject Header, JsonObject Content)
{
    /// <summary>Its kind, such as <c>execute_request</c>.</summary>
    public string Kind => (string?)Header["msg_type"] ?? "";
}

/// <summary>Writes and reads messages, signed with the connection's key.</summary>
/// <remarks>Source: Jupyter client documentation, "Messaging in Jupyter", section "The Wire Protocol", version 5.3.</remarks>
/// <param name="key">The connection's key; empty for unsigned messages.</param>
internal sealed class Wire(string key)
{
    private static readonly byte[] Mark = "<IDS|MSG>"u8.ToArray();

    private readonly byte[] _key = Encoding.UTF8.GetBytes(key);
    private readonly string _session = Guid.NewGuid().ToString("N");

    /// <summary>Reads a message; null for one that is malformed or signed with another key.</summary>
    public WireMessage? Read(NetMQMessage frames)
    {
        byte[][] parts = [.. frames.Select(frame => frame.ToByteArray())];
        int mark = Array.FindIndex(parts, part => part.AsSpan().SequenceEqual(Mark));
        if (mark < 0 || parts.Length < mark + 6
            || !CryptographicOperations.FixedTimeEquals(parts[mark + 1], Encoding.UTF8.GetBytes(Signature(parts[(mark + 2)..(mark + 6)]))))
        {
            return null;
        }

        return JsonNode.Parse(parts[mark + 2]) is JsonObject header && JsonNode.Parse(parts[mark + 5]) is JsonObject content
            ? new WireMessage(parts[..mark], header, content) : null;
    }

    /// <summary>Puts a message into frames.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="content">What it says.</param>
    /// <param name="parent">The message that it answers.</param>
    /// <param name="toSender">Whether it goes to the sender of that message alone; otherwise to all who listen.</param>
    public NetMQMessage Write(string kind, JsonObject content, WireMessage? parent, bool toSender)
    {
        var header = new JsonObject
        {
            ["msg_id"] = Guid.NewGuid().ToString("N"),
            ["session"] = _session,
            ["username"] = "kernel",
            ["date"] = DateTime.UtcNow.ToString("O", CultureInfo.InvariantCulture),
            ["msg_type"] = kind,
            ["version"] = KernelServer.ProtocolVersion,
        };
        byte[][] told = [Bytes(header), Bytes(parent?.Header ?? []), Bytes([]), Bytes(content)];
        IEnumerable<byte[]> to = toSender ? parent!.Identities : [Encoding.UTF8.GetBytes(kind)];
        return new NetMQMessage([.. to, Mark, Encoding.UTF8.GetBytes(Signature(told)), .. told]);
    }

    private static byte[] Bytes(JsonObject node) => Encoding.UTF8.GetBytes(node.ToJsonString());

    private string Signature(IEnumerable<byte[]> parts) => _key.Length == 0
        ? "" : Convert.ToHexStringLower(HMACSHA256.HashData(_key, parts.SelectMany(part => part).ToArray()));
}
