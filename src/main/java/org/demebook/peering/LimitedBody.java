package org.demebook.peering;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpResponse.BodyHandler;
import java.net.http.HttpResponse.BodySubscriber;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow.Subscription;

/** Reads an answer up to a size, and no byte beyond: the connection is dropped there. */
final class LimitedBody implements BodySubscriber<byte[]> {
    private final int most;
    private final ByteArrayOutputStream read = new ByteArrayOutputStream();
    private final CompletableFuture<byte[]> whole = new CompletableFuture<>();

    private LimitedBody(int most) {
        this.most = most;
    }

    /** @param mostOfAnError the same for every status but 200 */
    static BodyHandler<byte[]> of(int most, int mostOfAnError) {
        return answer -> new LimitedBody(answer.statusCode() == 200 ? most : mostOfAnError);
    }

    @Override
    public CompletionStage<byte[]> getBody() {
        return whole;
    }

    private Subscription subscription = new Subscription() {
        @Override
        public void request(long n) {}

        @Override
        public void cancel() {}
    };

    @Override
    public void onSubscribe(Subscription given) {
        subscription = given;
        given.request(1);
    }

    @Override
    public void onNext(List<ByteBuffer> buffers) {
        for (var buffer : buffers) {
            if (read.size() + (long) buffer.remaining() > most) {
                subscription.cancel();
                whole.completeExceptionally(new PeerTrouble(
                        PeerTrouble.Kind.ANSWER_TOO_LARGE, "It answered with more than %d bytes.".formatted(most)));
                return;
            }
            var bytes = new byte[buffer.remaining()];
            buffer.get(bytes);
            read.writeBytes(bytes);
        }
        subscription.request(1);
    }

    @Override
    public void onError(Throwable broken) {
        whole.completeExceptionally(broken);
    }

    @Override
    public void onComplete() {
        whole.complete(read.toByteArray());
    }
}
