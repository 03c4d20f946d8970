using System.Collections;
using System.Reflection;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>Everything that can be reached from a value through public properties and lists, as a caller of the library can.</summary>
internal static class ObjectGraph
{
    /// <summary>Each object once, with the way that led to it.</summary>
    public static IEnumerable<(string Way, object Value)> Of(string name, object root)
    {
        var seen = new HashSet<object>(ReferenceEqualityComparer.Instance);
        var queue = new Queue<(string Way, object Value)>([(name, root)]);
        while (queue.TryDequeue(out (string Way, object Value) next))
        {
            if (next.Value is not (ValueType or string) && !seen.Add(next.Value))
            {
                continue;
            }

            yield return next;
            foreach ((string, object) part in Parts(next.Way, next.Value))
            {
                queue.Enqueue(part);
            }
        }
    }

    /// <summary>Every number that a value holds, to the last bit, in a fixed order.</summary>
    public static IReadOnlyList<long> Bits(object root) =>
    [
        .. Of(string.Empty, root).SelectMany(part => part.Value switch
        {
            IQuantity quantity => [BitConverter.DoubleToInt64Bits((double)quantity.Value)],
            double number => [BitConverter.DoubleToInt64Bits(number)],
            int number => [number],
            bool or Enum => [Convert.ToInt64(part.Value, global::System.Globalization.CultureInfo.InvariantCulture)],
            string text => text.Select(letter => (long)letter),
            _ => Array.Empty<long>(),
        }),
    ];

    private static IEnumerable<(string, object)> Parts(string way, object value)
    {
        Type type = value.GetType();
        if (value is IEnumerable list and not string)
        {
            return list.Cast<object?>().Take(8).OfType<object>().Select((element, i) => ($"{way}[{i}]", element));
        }

        // What is not the library's own is looked at, but not into.
        return type.Namespace?.StartsWith("FuelSizing", StringComparison.Ordinal) is true && !type.IsEnum
            ? from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
              where property.GetIndexParameters().Length == 0 && !property.PropertyType.IsByRefLike
              let part = property.GetValue(value)
              where part is not null
              select ($"{way}.{property.Name}", part)
            : [];
    }
}
