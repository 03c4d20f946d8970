using System.Reflection;
using System.Text;
using FuelSizing.Data;
using FuelSizing.Files;
using FuelSizing.Logs;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Files;

/// <summary>
/// Whatever is read from a file is read from a text, a stream, and a stream without waiting as well, with the same answer; and a question, TryParse, gives the same
/// problems as the exception does.
/// </summary>
public class FileStreamTests
{
    private static readonly Dictionary<Type, (string Name, string Good, string Bad)> Texts = new()
    {
        [typeof(Setup)] = ("wren.json", Setup.Of(Wren.System(), ("full load", Wren.At(6800, 0.6))).ToJson(), """{ "setup": 1, "engine": 3 }"""),
        [typeof(ResultData)] = ("result.json", ResultData.Of(Wren.System().Solve(Wren.At(6800, 0.6))).ToJson(), """{ "result": 1, "kind": "sweep" }"""),
        [typeof(Catalogue)] = ("parts.json", """{ "catalogue": 1, "regulators": [ { "name": "R", "kind": "fixed", "base": "3 bar" } ] }""", """{ "catalogue": 1, "regulators": [ { "name": "R" } ] }"""),
        [typeof(BenchTests)] = ("bench.json", """{ "bench": 1 }""", """{ "bench": 7 }"""),
        [typeof(RunMapping)] = ("mapping.json", RunMappingFile.ToJson(RunMapping.Of(RunColumn.Speed("Speed", UnitsNet.Units.RotationalSpeedUnit.RevolutionPerMinute))), """{ "columns": 3 }"""),
    };

    public static TheoryData<string> Names => [.. Texts.Keys.Select(type => type.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Text_OfAFile_IsReadFromAStreamToo_AndLeavesItOpen(string name)
    {
        (Type type, Type reader) = Of(name);
        (string file, string good, _) = Texts[type];
        object parsed = Call(reader, "Parse", file, good)!;
        foreach (string start in (string[])["", "\uFEFF"])
        {
            using Dripping stream = new(Encoding.UTF8.GetBytes(start + good));
            Assert.Equal(parsed, Call(reader, "Read", stream, file));
            Assert.True(stream.CanRead);
            using Dripping again = new(Encoding.UTF8.GetBytes(start + good));
            Assert.Equal(parsed, await Async(Call(reader, "ReadAsync", again, file, CancellationToken.None)!));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Text_WithAProblem_IsAnException_OrAnAnswerThatNamesTheSame(string name)
    {
        (Type type, Type reader) = Of(name);
        (string file, string good, string bad) = Texts[type];
        FileException thrown = Assert.ThrowsAny<FileException>(() => Call(reader, "Parse", file, bad));
        object?[] asked = [file, bad, null, null];
        Assert.False((bool)Method(reader, "TryParse", 4).Invoke(null, asked)!);
        Assert.Null(asked[2]);
        Assert.NotEmpty(thrown.Problems);
        Assert.Equal(thrown.Problems, (IReadOnlyList<FileProblem>)asked[3]!);
        using Dripping stream = new(Encoding.UTF8.GetBytes(bad));
        Assert.Equal(thrown.Problems, Assert.ThrowsAny<FileException>(() => Call(reader, "Read", stream, file)).Problems);
        using Dripping again = new(Encoding.UTF8.GetBytes(bad));
        Assert.Equal(thrown.Problems, (await Assert.ThrowsAnyAsync<FileException>(() => Async(Call(reader, "ReadAsync", again, file, CancellationToken.None)!))).Problems);

        asked = [file, good, null, null];
        Assert.True((bool)Method(reader, "TryParse", 4).Invoke(null, asked)!);
        Assert.Equal(Call(reader, "Parse", file, good), asked[2]);
        Assert.Empty((IReadOnlyList<FileProblem>)asked[3]!);
    }

    /// <summary>Bytes that are no text, and a stream without end, are problems and not a wait.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public async Task Stream_ThatIsNoText_OrHasNoEnd_IsAProblem(string name)
    {
        (Type type, Type reader) = Of(name);
        string file = Texts[type].Name;
        using MemoryStream invalid = new([0x7B, 0xC3, 0x28]);
        Assert.Contains("UTF-8", Assert.ThrowsAny<FileException>(() => Call(reader, "Read", invalid, file)).Message, StringComparison.Ordinal);
        using Endless endless = new();
        Assert.Contains("larger than", Assert.ThrowsAny<FileException>(() => Call(reader, "Read", endless, file)).Message, StringComparison.Ordinal);
        using Endless again = new();
        await Assert.ThrowsAnyAsync<FileException>(() => Async(Call(reader, "ReadAsync", again, file, CancellationToken.None)!));
        using Endless stopped = new();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Async(Call(reader, "ReadAsync", stopped, file, new CancellationToken(true))!));
    }

    [Fact]
    public async Task WhatIsWritten_ToAStream_IsWhatAFileHolds()
    {
        Setup setup = Setup.Parse(Texts[typeof(Setup)].Name, Texts[typeof(Setup)].Good);
        ResultData result = ResultData.Parse(Texts[typeof(ResultData)].Name, Texts[typeof(ResultData)].Good);
        RunMapping mapping = RunMappingFile.Parse(Texts[typeof(RunMapping)].Name, Texts[typeof(RunMapping)].Good);
        await Same(setup.ToJson(), setup.Write, setup.WriteAsync);
        await Same(result.ToJson(), result.Write, result.WriteAsync);
        await Same(RunMappingFile.ToJson(mapping), stream => RunMappingFile.Write(mapping, stream), (stream, stop) => RunMappingFile.WriteAsync(mapping, stream, stop));
        using MemoryStream closed = new();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => setup.WriteAsync(closed, new CancellationToken(true)));

        static async Task Same(string text, Action<Stream> write, Func<Stream, CancellationToken, Task> writeAsync)
        {
            using MemoryStream written = new();
            write(written);
            using MemoryStream later = new();
            await writeAsync(later, CancellationToken.None);
            Assert.Equal(text, Encoding.UTF8.GetString(written.ToArray()));
            Assert.Equal(written.ToArray(), later.ToArray());
        }
    }

    private static (Type Type, Type Reader) Of(string name)
    {
        Type type = Texts.Keys.Single(one => one.Name == name);
        return (type, type == typeof(RunMapping) ? typeof(RunMappingFile) : type);
    }

    private static MethodInfo Method(Type reader, string method, int count, Type? first = null) => reader.GetMethods(BindingFlags.Public | BindingFlags.Static)
        .Single(one => one.Name == method && one.GetParameters().Length == count && (first is null || one.GetParameters()[0].ParameterType.IsAssignableFrom(first)));

    private static object? Call(Type reader, string method, params object[] arguments)
    {
        try
        {
            return Method(reader, method, arguments.Length, arguments[0].GetType()).Invoke(null, arguments);
        }
        catch (TargetInvocationException wrapped)
        {
            global::System.Runtime.ExceptionServices.ExceptionDispatchInfo.Capture(wrapped.InnerException!).Throw();
            throw;
        }
    }

    private static async Task<object> Async(object task)
    {
        await (Task)task;
        return task.GetType().GetProperty("Result")!.GetValue(task)!;
    }

    /// <summary>Gives a few bytes at a time, as a network does.</summary>
    private sealed class Dripping(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, 7));

        public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(buffer.Length, 7)]);

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            base.ReadAsync(buffer[..Math.Min(buffer.Length, 7)], cancellationToken);
    }

    /// <summary>Gives spaces for ever.</summary>
    private sealed class Endless : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)' ');
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
