using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Document types, found through their entries.</summary>
internal static class Documents
{
    /// <summary>A document type and all the types of its parts, kinds instead of what they are kinds of included.</summary>
    public static IReadOnlyCollection<Type> Of(Type root)
    {
        HashSet<Type> found = [];
        void Visit(Type type)
        {
            if (!found.Add(type))
            {
                return;
            }

            foreach (KindAttribute kind in FieldMap.Kinds(type))
            {
                Visit(kind.Document);
            }

            foreach (FieldInfo field in FieldMap.Of(type))
            {
                (FieldShape shape, Type inner) = field.Shape == FieldShape.List
                    ? FieldMap.ShapeOf(field.ValueType) : (field.Shape, field.ValueType);
                if (shape == FieldShape.Document)
                {
                    Visit(inner);
                }
            }
        }

        Visit(root);
        return found;
    }
}
