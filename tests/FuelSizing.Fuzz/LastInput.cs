using System.IO.MemoryMappedFiles;

namespace FuelSizing.Fuzz;

/// <summary>The input at hand, in a file that outlives the process: what a stack overflow would else take with it. Open to the end.</summary>
internal sealed class LastInput
{
    private const int Room = 16 << 20;

    private readonly MemoryMappedViewAccessor _view;

    /// <summary>Opens the file in a folder.</summary>
    public LastInput(string folder)
    {
        Directory.CreateDirectory(folder);
        MemoryMappedFile file = MemoryMappedFile.CreateFromFile(Path.Combine(folder, "last-input"), FileMode.OpenOrCreate, null, Room);
        _view = file.CreateViewAccessor();
        int length = _view.ReadInt32(0);
        if (length > 0)
        {
            byte[] input = new byte[length - 1];
            _view.ReadArray(4, input, 0, input.Length);
            Left = input;
        }
    }

    /// <summary>The input that a process before this one died of; none if it ended as it should.</summary>
    public byte[]? Left { get; }

    /// <summary>Notes an input before it is read; its length last, since that is what counts.</summary>
    public void Note(byte[] input)
    {
        _view.WriteArray(4, input, 0, input.Length);
        _view.Write(0, input.Length + 1);
    }

    /// <summary>Notes that nothing is at hand.</summary>
    public void Clear() => _view.Write(0, 0);
}
