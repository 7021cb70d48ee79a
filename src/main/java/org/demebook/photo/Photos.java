package org.demebook.photo;

import static org.demebook.problem.ProblemType.NO_SUCH_PHOTO;
import static org.demebook.problem.ProblemType.UNREADABLE_PHOTO;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import jakarta.ws.rs.core.Response;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Entry;
import org.demebook.problem.Refusal;

/** The photographs of the populations on this node, by their subjects. Who may see them is decided before. */
@ApplicationScoped
public class Photos {
    private static final String NOT_OF_THOSE = "populationId = :population and addedBy = :keeper"
            + " and (animalId is null or animalId not in (select a.id from Animal a where a.populationId = :population"
            + " and (a.collectionId in :shared or a.ownerCollectionId in :shared)))"
            + " and (litterId is null or litterId not in (select l.id from Litter l where l.populationId = :population"
            + " and l.collectionId in :shared))";

    /**
     * Takes everything out of an upload but the picture. Slow (a second or two for a large one): called before the
     * transaction that stores it. Refuses with UNREADABLE_PHOTO.
     */
    public PhotoFile clean(byte[] upload) {
        try {
            return PhotoFile.clean(upload);
        } catch (IllegalArgumentException e) {
            throw new Refusal(UNREADABLE_PHOTO, e.getMessage() + ".", List.of(), e);
        }
    }

    /** Keeps the picture, once however often it was sent; called before the fact that tells of it is recorded. */
    @Transactional(TxType.MANDATORY)
    public void keep(UUID populationId, PhotoFile file) {
        if (PhotoContent.of(populationId, file.sha256()) == null) {
            new PhotoContent(populationId, file).persist();
        }
    }

    /** Adds a photograph to what it shows; called while the fact that tells of it is applied. */
    @Transactional(TxType.MANDATORY)
    public void add(Entry entry, Subject subject, TakenPhoto taken) {
        new Photo(entry, subject, taken).persistAndFlush();
    }

    /** Whether there is, or still is, such a photograph; whoever asks. */
    @Transactional
    public boolean has(UUID populationId, UUID photoId) {
        return Photo.of(populationId, photoId) != null;
    }

    /**
     * Takes the photographs of a keeper out of the register, but for those of animals and litters that stay with others; called
     * while the fact that they left is applied.
     */
    @Transactional(TxType.MANDATORY)
    public void takeOut(UUID populationId, UUID keeperId, Set<UUID> sharedCollections) {
        Photo.flush();
        var shared = sharedCollections.isEmpty() ? Set.of(new UUID(0, 0)) : sharedCollections;
        Photo.delete(NOT_OF_THOSE, Map.of("population", populationId, "keeper", keeperId, "shared", shared));
    }

    /** Takes the pictures out that no photograph shows any more. */
    @Transactional(TxType.MANDATORY)
    public void dropUnused(UUID populationId) {
        PhotoContent.delete(
                "populationId = ?1 and sha256 not in (select p.sha256 from Photo p where p.populationId = ?1)",
                populationId);
    }

    /** Of each animal its photographs, the oldest first; an animal without any is left out. One query. */
    @Transactional
    public Map<UUID, List<PhotoView>> ofAnimals(UUID populationId, Collection<UUID> animalIds) {
        return Photo.ofAnimals(populationId, animalIds).stream()
                .collect(Collectors.groupingBy(
                        photo -> photo.animalId, Collectors.mapping(Photo::view, Collectors.toList())));
    }

    /** The photographs of a litter, the oldest first. */
    @Transactional
    public List<PhotoView> ofLitter(UUID populationId, UUID litterId) {
        return Photo.ofLitter(populationId, litterId).stream().map(Photo::view).toList();
    }

    /** A picture as it is sent: it never changes, and is nobody's but the asker's to keep. */
    public static Response sent(byte[] jpeg) {
        return Response.ok(jpeg, "image/jpeg")
                .header("Cache-Control", "private, max-age=86400, immutable")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }

    /**
     * The bytes of a picture (JPEG).
     *
     * @param shown the photographs that the asker may see; any other does not exist for them
     * @param subject as the keeper knows it
     */
    @Transactional
    public byte[] bytes(UUID populationId, List<PhotoView> shown, UUID photoId, String subject, boolean thumbnail) {
        var photo = Photo.of(populationId, photoId);
        if (photo == null || shown.stream().noneMatch(view -> view.id().equals(photoId))) {
            throw new Refusal(NO_SUCH_PHOTO, "There is no such photograph of %s.".formatted(subject));
        }
        var content = PhotoContent.of(populationId, photo.sha256);
        if (content == null) {
            throw new Refusal(NO_SUCH_PHOTO, "The picture itself is not on this node.");
        }
        return thumbnail ? content.thumbnail : content.picture;
    }
}
