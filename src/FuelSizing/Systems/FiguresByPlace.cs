using System.Buffers;

namespace FuelSizing.Systems;

/// <summary>The places that a search has looked at, and how each check came out there: a row of numbers a place, found by speed and boost.</summary>
/// <remarks>
/// <para>How a check came out is one number, as <see cref="JudgedFigure"/> says.</para>
/// <para>Its arrays are rented, so that a sweep does not leave megabytes to be collected; they go back when the search is done.</para>
/// </remarks>
internal sealed class FiguresByPlace : IDisposable
{
    /// <summary>Stands for a place that is not among them.</summary>
    public const int None = -1;

    private const int Fewest = 64;

    // A sweep that is stopped at its first boost has no use for more.
    private const int MaximumAtFirst = 1 << 16;

    private readonly int _columns;
    private Spot[] _spots;
    private double[] _figures;

    // Open addressing: a place's number and one, by its hash, or in the next that is free; half of them at the most are taken.
    private int[] _buckets;
    private int _mask;

    /// <summary>No places yet.</summary>
    /// <param name="columns">Numbers a row.</param>
    /// <param name="expected">How many places there will be, about.</param>
    public FiguresByPlace(int columns, int expected)
    {
        _columns = columns;
        int room = Math.Clamp(expected, Fewest, MaximumAtFirst);
        _spots = ArrayPool<Spot>.Shared.Rent(room);
        _figures = ArrayPool<double>.Shared.Rent(room * columns);
        (_buckets, _mask) = Buckets(room);
    }

    /// <summary>How many.</summary>
    public int Count { get; private set; }

    /// <summary>Speed, rev/min, of a place by its number.</summary>
    public double SpeedOf(int place) => _spots[place].Speed;

    /// <summary>Its boost, Pa.</summary>
    public double BoostOf(int place) => _spots[place].Boost;

    /// <summary>Which of the sweep's own points it is; <see cref="None"/> where the search has added it.</summary>
    public int OwnOf(int place) => _spots[place].Own;

    /// <summary>Its row.</summary>
    public Span<double> Row(int place) => _figures.AsSpan(place * _columns, _columns);

    /// <summary>A figure of its row.</summary>
    public double Figure(int place, int column) => _figures[(place * _columns) + column];

    /// <summary>The place at a speed and a boost, or <see cref="None"/>.</summary>
    public int Find(double speed, double boost)
    {
        for (int bucket = Hash(speed, boost) & _mask; _buckets[bucket] is var taken and > 0; bucket = (bucket + 1) & _mask)
        {
            ref readonly Spot spot = ref _spots[taken - 1];
            if (spot.Speed == speed && spot.Boost == boost)
            {
                return taken - 1;
            }
        }

        return None;
    }

    /// <summary>Adds a place that is not among them yet, its row to be written.</summary>
    public int Add(double speed, double boost, int own)
    {
        if (Count == _spots.Length || (Count + 1) * _columns > _figures.Length)
        {
            Grow(ref _spots, Count, 2 * Count);
            Grow(ref _figures, Count * _columns, 2 * Count * _columns);
        }

        if (2 * (Count + 1) > _mask)
        {
            ArrayPool<int>.Shared.Return(_buckets);
            (_buckets, _mask) = Buckets(2 * Count);
            for (int place = 0; place < Count; place++)
            {
                Enter(place);
            }
        }

        _spots[Count] = new(speed, boost, own);
        Enter(Count);
        return Count++;
    }

    /// <summary>Says that a place is another of the sweep's own points: two may differ in their own units and not in these.</summary>
    public void Own(int place, int own) => _spots[place] = _spots[place] with { Own = own };

    /// <summary>The places alone from one on, to keep.</summary>
    public (double Speed, double Boost, int Own)[] CopyFrom(int first)
    {
        (double, double, int)[] copy = new (double, double, int)[Count - first];
        for (int place = 0; place < copy.Length; place++)
        {
            Spot spot = _spots[first + place];
            copy[place] = (spot.Speed, spot.Boost, spot.Own);
        }

        return copy;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        ArrayPool<Spot>.Shared.Return(_spots);
        ArrayPool<double>.Shared.Return(_figures);
        ArrayPool<int>.Shared.Return(_buckets);
        (_spots, _figures, _buckets, Count) = ([], [], [], 0);
    }

    private static (int[] Buckets, int Mask) Buckets(int places)
    {
        int length = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)(2 * (places + 1)));
        int[] buckets = ArrayPool<int>.Shared.Rent(length);
        Array.Clear(buckets, 0, length);
        return (buckets, length - 1);
    }

    private static void Grow<T>(ref T[] array, int used, int length)
    {
        T[] larger = ArrayPool<T>.Shared.Rent(length);
        Array.Copy(array, larger, used);
        ArrayPool<T>.Shared.Return(array);
        array = larger;
    }

    // Zero and minus zero are one place.
    private static int Hash(double speed, double boost)
    {
        const ulong Odd = 0x9E3779B97F4A7C15;
        ulong mixed = (BitConverter.DoubleToUInt64Bits(speed + 0.0) * Odd) ^ BitConverter.DoubleToUInt64Bits(boost + 0.0);
        return (int)((mixed * Odd) >> 33);
    }

    private void Enter(int place)
    {
        int bucket = Hash(_spots[place].Speed, _spots[place].Boost) & _mask;
        while (_buckets[bucket] > 0)
        {
            bucket = (bucket + 1) & _mask;
        }

        _buckets[bucket] = place + 1;
    }

    private readonly record struct Spot(double Speed, double Boost, int Own);
}
